import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { Exercise } from '../../../src/engine/exercise/index.ts';
import type { PlayedNote } from '../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { heardOf, played } from './simulated.ts';

// Each bound of the alignment from both sides: just within it, and just beyond.

// C E G C E G C G E C G E C, one key a step.
const ARPEGGIO = buildExercise({ key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 });
// Four chords of three keys.
const TRIADS = buildExercise({ key: 'C major', form: 'triads', hands: 'right', octaves: 1 });
const STEP_SEC = 0.4;
const LAST = ARPEGGIO.steps.length - 1;
const BEATS_A_STEP = ARPEGGIO.steps[1]!.beat - ARPEGGIO.steps[0]!.beat;

const keyAt = (step: number): number => ARPEGGIO.steps[step]!.notes[0]!.midi;
const timeOf = (step: number, stepSec = STEP_SEC): number => 2 + stepSec * step;

/** The arpeggio in time, without some steps, and other notes besides. */
function playing(
  more: readonly PlayedNote[],
  { without = [], stepSec = STEP_SEC }: { without?: readonly number[]; stepSec?: number } = {},
): readonly PlayedNote[] {
  const own = ARPEGGIO.steps
    .filter(({ step }) => !without.includes(step))
    .map(({ step }) => played(timeOf(step, stepSec), keyAt(step)));
  return [...own, ...more];
}

/** What is not right of it, and what is extra. */
function told(notes: readonly PlayedNote[], exercise: Exercise = ARPEGGIO): readonly string[] {
  const { matched, extras } = matchNotes(heardOf(notes), exercise);
  return [
    ...matched
      .filter(({ verdict }) => verdict !== 'correct')
      .map(({ verdict, step }) => `${verdict} ${step}`),
    ...extras.map(({ kind, step }) => `${kind} ${step}`),
  ];
}

describe('a key caught with a right one', () => {
  // Step 4 is E5; what comes between it and step 5 without being caught is another extra note.
  it.each([
    ['a semitone beside it within 80 ms', 1, 0.079, 'slip 4'],
    ['a whole tone beside it within 80 ms', -2, 0.079, 'slip 4'],
    ['before it', 1, -0.079, 'slip 4'],
    ['the same key, which is struck again', 0, 0.079, 'repeat 4'],
    ['later', 1, 0.082, 'other 4'],
    ['further off', -3, 0.05, 'other 4'],
  ])('%s', (_, semitones, sec, kind) => {
    expect(told(playing([played(timeOf(4) + sec, keyAt(4) + semitones)]))).toEqual([kind]);
  });

  it('is a slip of the nearer one in time of two', () => {
    // Steps 11 and 12, E4 and C4, 140 ms apart: D4 in between lies beside both.
    const notes = playing([played(timeOf(11) + 0.08, 62)], { without: [12] });
    expect(told([...notes, played(timeOf(11) + 0.14, 60)])).toEqual(['slip 12']);
    const sooner = playing([played(timeOf(11) + 0.065, 62)], { without: [12] });
    expect(told([...sooner, played(timeOf(11) + 0.14, 60)])).toEqual(['slip 11']);
  });
});

describe('a key struck in place of another', () => {
  const instead = (step: number, semitones: number, shareOfStep = 0, confidence = 0.95): readonly string[] =>
    told(
      playing([played(timeOf(step) + shareOfStep * STEP_SEC, keyAt(step) + semitones, { confidence })], {
        without: [step],
      }),
    );

  it.each([
    ['nine semitones off', 9, 'wrong 4'],
    ['an octave off', 12, 'wrong 4'],
    ['an octave off downwards', -12, 'wrong 4'],
  ])('%s is wrong', (_, semitones, kind) => {
    expect(instead(4, semitones)).toEqual([kind]);
  });

  it.each([10, 11])('%i semitones off is none: one missed, one extra', (semitones) => {
    expect(instead(4, semitones)).toEqual(['missed 4', 'other 3']);
  });

  it.each([
    [0.64, ['wrong 4']],
    [-0.64, ['wrong 4']],
    [0.67, ['missed 4', 'other 3']],
    [-0.67, ['missed 4', 'other 3']],
  ])('at %f of a step from its time: %j', (share, kinds) => {
    expect(instead(4, -2, share)).toEqual(kinds);
  });

  it('of two missed in a row is in place by a step as long as the others', () => {
    const second = (share: number): readonly string[] =>
      told(playing([played(timeOf(5) + share * STEP_SEC, keyAt(5) - 2)], { without: [4, 5] }));
    expect(second(0.63)).toEqual(['missed 4', 'wrong 5']);
    expect(second(0.68)).toEqual(['missed 4', 'missed 5', expect.stringMatching(/^other/)]);
  });

  it('heard with a confidence of 0.4 is wrong, with less unsure', () => {
    expect(instead(4, -2, 0, 0.41)).toEqual(['wrong 4']);
    expect(instead(4, -2, 0, 0.39)).toEqual(['unsure 4']);
  });

  it('is the nearer one of two, though the other was better in time; that one is extra', () => {
    const of = (...others: readonly (readonly [semitones: number, shareOfStep: number])[]) => {
      const struck = others.map(([semitones, share]) =>
        played(timeOf(4) + share * STEP_SEC, keyAt(4) + semitones),
      );
      const heard = heardOf(playing(struck, { without: [4] }));
      const { matched, extras } = matchNotes(heard, ARPEGGIO);
      const answer = matched[4]!;
      const key = 'played' in answer ? heard.notes[answer.played!]!.midi - keyAt(4) : null;
      return [answer.verdict, key, extras.length];
    };
    expect(of([-2, 0.1], [-6, 0])).toEqual(['wrong', -2, 1]);
    expect(of([-6, 0], [-2, 0.1])).toEqual(['wrong', -2, 1]);
  });

  it('of a chord whose other keys were struck comes within half that time', () => {
    const chords = (shareOfStep: number): readonly string[] => {
      const notes = TRIADS.steps.flatMap(({ step, notes: keys }) =>
        keys.map(({ midi }, at) =>
          step === 1 && at === 1 ? played(3 + shareOfStep, midi + 1) : played(2 + step, midi),
        ),
      );
      return told(notes, TRIADS);
    };
    expect(chords(0.32)).toEqual(['wrong 1']);
    expect(chords(0.34)).toEqual(['missed 1', 'other 1']);
  });
});

describe('a chord’s note that comes after the others', () => {
  it.each([0.3, 1.2, 2.5])('by %f steps is still that note where the next chord waits for it', (late) => {
    const notes = TRIADS.steps.flatMap(({ step, notes: keys }) =>
      keys.map(({ midi }, at) => played(2 + step + (step > 2 || (step === 2 && at === 1) ? late : 0), midi)),
    );
    expect(told(notes, TRIADS)).toEqual([]);
  });
});

describe('a note too many', () => {
  const between = timeOf(4) + STEP_SEC / 2;
  it('counts from a confidence of 0.5 on', () => {
    expect(told(playing([played(between, 78, { confidence: 0.51 })]))).toEqual(['other 4']);
    expect(told(playing([played(between, 78, { confidence: 0.49 })]))).toEqual([]);
  });

  it('counts where it is no more than 20 dB softer than the middle note', () => {
    expect(told(playing([played(between, 78, { levelDb: -39.5 })]))).toEqual(['other 4']);
    expect(told(playing([played(between, 78, { levelDb: -40.5 })]))).toEqual([]);
  });

  it('counts within an octave of the keys about it: no hand reaches further', () => {
    // About step 4 lie G4, C5, E5, G5 and C6.
    expect(told(playing([played(between, 84 + 12)]))).toEqual(['other 4']);
    expect(told(playing([played(between, 84 + 13)]))).toEqual([]);
    expect(told(playing([played(between, 67 - 12)]))).toEqual(['other 4']);
    expect(told(playing([played(between, 67 - 13)]))).toEqual([]);
  });

  it('on a partial of a right note counts where it lies 60 ms from it', () => {
    for (const semitones of [-12, 12, 19, 24, 28, 31, 34, 36]) {
      const at = (sec: number): readonly string[] =>
        told(playing([played(timeOf(2) + sec, keyAt(2) + semitones)]));
      expect(at(0.055)).toEqual([]);
      expect(at(-0.055)).toEqual([]);
    }
    for (const sec of [0.065, -0.065])
      expect(told(playing([played(timeOf(2) + sec, keyAt(2) + 12)]))).toEqual([`other ${sec > 0 ? 2 : 1}`]);
  });

  it('that is the same key again is its own tone where it is 10 dB softer within two seconds', () => {
    const again = (sec: number, levelDb: number): readonly string[] =>
      told(playing([played(timeOf(4, 3) + sec, keyAt(4), { levelDb })], { stepSec: 3 }));
    expect(again(1.9, -29.5)).toEqual(['repeat 4']);
    expect(again(1.9, -30.5)).toEqual([]);
    expect(again(2.1, -30.5)).toEqual(['repeat 4']);
  });

  it('before the first note or after the last is no part of the attempt, but for what is caught with them', () => {
    expect(told(playing([played(timeOf(0) - 0.3, 62)]))).toEqual([]);
    expect(told(playing([played(timeOf(LAST) + 0.3, 65)]))).toEqual([]);
    expect(told(playing([played(timeOf(LAST) + 0.05, 62)]))).toEqual([`slip ${LAST}`]);
    expect(told(playing([played(timeOf(LAST) + 0.3, 60)]))).toEqual([`repeat ${LAST}`]);
  });
});

describe('the stretch of an attempt', () => {
  const run = (stepSec: number, durationSec = 99) =>
    matchNotes(heardOf(playing([], { stepSec }), { durationSec }), ARPEGGIO).run;

  it('goes from its first note to four beats after its last, a second and a half at least, or to the end', () => {
    for (const stepSec of [0.1, 1]) {
      const lastSec = timeOf(LAST, stepSec);
      const afterSec = Math.max(1.5, (4 * stepSec) / BEATS_A_STEP);
      expect(run(stepSec).startSec).toBeCloseTo(2, 9);
      expect(run(stepSec).endSec).toBeCloseTo(lastSec + afterSec, 6);
      expect(run(stepSec, lastSec + 1).endSec).toBeCloseTo(lastSec + 1, 9);
    }
  });
});

describe('a stop', () => {
  it('is a time from step to step more than three beats too long', () => {
    const stopped = (beats: number): readonly string[] => {
      const moreSec = (beats * STEP_SEC) / BEATS_A_STEP;
      const notes = playing([]).map((note) =>
        note.timeSec > timeOf(4) + 0.01 ? { ...note, timeSec: note.timeSec + moreSec } : note,
      );
      return matchNotes(heardOf(notes), ARPEGGIO).remarks.map(({ kind }) => kind);
    };
    expect(stopped(2.95)).toEqual([]);
    expect(stopped(3.05)).toEqual(['stopped']);
  });
});

describe('how well an exercise explains the notes', () => {
  const fit = (notes: readonly PlayedNote[], exercise: Exercise): number =>
    matchNotes(heardOf(notes), exercise).fit;

  it('is lower by a chord’s note that comes later than a quarter of a step after the first', () => {
    const size = TRIADS.steps.reduce((sum, { notes }) => sum + notes.length, 0);
    const rolled = (shareOfStep: number): readonly PlayedNote[] =>
      TRIADS.steps.flatMap(({ step, notes }) =>
        notes.map(({ midi }, at) => played(2 + step + (step === 1 && at === 2 ? shareOfStep : 0), midi)),
      );
    expect(fit(rolled(0.24), TRIADS)).toBeCloseTo(1, 9);
    expect(fit(rolled(0.26), TRIADS)).toBeCloseTo((2 * size - 1) / (2 * size), 9);
  });

  it('is lower by a finding that is left out of the report, unless it is most likely none', () => {
    const size = LAST + 1;
    const withGhost = (confidence: number): number =>
      fit(playing([played(timeOf(2), keyAt(2) + 12, { confidence })]), ARPEGGIO);
    expect(withGhost(0.79)).toBeCloseTo(1, 9);
    expect(withGhost(0.81)).toBeCloseTo((2 * size) / (2 * size + 1), 9);
    expect(withGhost(0.49)).toBeCloseTo(1, 9);
  });

  it('is found three octaves from where it is written, and no further', () => {
    const moved = (octaves: number) =>
      matchNotes(heardOf(playing([]).map((note) => ({ ...note, midi: note.midi + 12 * octaves }))), ARPEGGIO);
    for (const octaves of [-3, -2, 2, 3])
      expect(moved(octaves)).toMatchObject({ octaveShift: octaves, fit: expect.closeTo(1, 9) });
    expect(moved(-4).fit).toBeLessThan(0.5);
  });
});
