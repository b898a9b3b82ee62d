import { describe, expect, it } from 'vitest';
import {
  copiesMeant,
  practisedExercise,
  stretchIn,
  buildExercise,
} from '../../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, ExpectedNote, Intention } from '../../../../src/engine/exercise/index.ts';
import { matchIntention } from '../../../../src/engine/intention/index.ts';
import type { PianoProfile } from '../../../../src/engine/listen/index.ts';
import type { Report, ReportOptions } from '../../../../src/engine/report/index.ts';
import { writeReport } from '../../../../src/engine/report/index.ts';
import { heardOf, played } from '../../match/simulated.ts';

// What is said of an attempt at an intention, and what comes next: by the rules of lacks.ts, copies.ts and leading-back.ts, by hand.

/** Two notes a beat, up and down in fifteen. */
const SCALE: ExerciseChoice = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 };
const LAST = 14;
const ONCE: Intention = { times: 1, rhythm: 'even' };
const part = (fromStep: number, toStep: number, more: Partial<Intention> = {}): Intention => ({
  ...ONCE,
  stretch: { fromStep, toStep },
  ...more,
});

interface Way {
  readonly choice?: ExerciseChoice;
  readonly bpm?: number;
  readonly longToShort?: number;
  readonly copies?: number;
  /** of these steps, counted on from copy to copy, another key is struck */
  readonly wrong?: readonly number[];
  /** later, and all after it too, s */
  readonly lateSec?: (step: number) => number;
  /** louder (+) or softer, by step and hand, dB */
  readonly levelDb?: (step: number, note: ExpectedNote) => number;
  /** held into the next note (+), or let go before it, ms */
  readonly overlapMs?: number;
  readonly options?: Partial<ReportOptions>;
}

/** An intention, played as it is written but for what is said otherwise → its report. */
function tellOf(intention: Intention, way: Way = {}): Report {
  const { choice = SCALE, bpm = 100, longToShort = 3, wrong = [], lateSec, levelDb, options } = way;
  const heldSec = 30 / bpm + (way.overlapMs ?? 0) / 1000;
  const { copies = copiesMeant(intention, stretchIn(buildExercise(choice), intention).length) } = way;
  const { steps } = practisedExercise(choice, { intention, repeats: copies, longToShort });
  let late = 0;
  const notes = steps.flatMap(({ step, beat, notes: keys }) => {
    late += lateSec?.(step) ?? 0;
    return keys.map((key) => {
      const timeSec = 1 + (beat * 60) / bpm + late;
      return played(timeSec, key.midi + (wrong.includes(step) ? 1 : 0), {
        confidence: 0.998,
        levelDb: -20 + (levelDb?.(step, key) ?? 0),
        releaseSec: timeSec + heldSec,
      });
    });
  });
  const heard = heardOf(notes);
  return writeReport(heard, matchIntention(heard, choice, intention), options);
}

const practisedIn = ({ words }: Report) => {
  const [one] = words.said!.statements;
  if (one?.situation !== 'practised') throw new Error(words.verdict);
  return one;
};
const nextOf = ({ words: { practice, said } }: Report) => ({ ...practice, step: said!.advice.step });

describe('after work that is done', () => {
  it.each<readonly [string, Intention, Intention]>([
    [
      'the next of its rhythms',
      part(2, 6, { rhythm: 'long-short', then: ['short-long', 'even'] }),
      part(2, 6, { rhythm: 'short-long', then: ['even'] }),
    ],
    ['the last of its rhythms', part(2, 6, { rhythm: 'long-short', then: ['even'] }), part(2, 6)],
    ['even, where no rhythm follows', part(2, 6, { rhythm: 'long-short' }), part(2, 6)],
    ['what comes before it, as long again', part(8, 11), part(4, 11)],
    ['what comes before it, as far as there is', part(1, 4), part(0, 4)],
    ['what comes before it, up to half of the whole', part(7, 13), part(0, 13)],
  ])('comes %s', (_, intention, next) => {
    const report = tellOf(intention, { options: { targetBpm: 100 } });
    expect(practisedIn(report).outcome, report.words.verdict).toBe('done');
    expect(nextOf(report)).toMatchObject({ step: 'practise', ...next.stretch, tempoBpm: 100 });
    expect(report.words.practice!.intention).toEqual(next);
  });

  it.each([
    ['from the beginning', part(0, 5)],
    ['of more than half of it', part(6, 13)],
    ['of all of it, several times', { times: 2, rhythm: 'even' }],
  ] as const)('comes the whole after a part %s', (_, intention) => {
    const report = tellOf(intention, { options: { targetBpm: 100 } });
    expect(practisedIn(report).outcome, report.words.verdict).toBe('done');
    expect(nextOf(report)).toEqual({
      step: 'now-the-whole',
      fromStep: 0,
      toStep: LAST,
      tempoBpm: 100,
      intention: ONCE,
    });
  });

  it('note by note, where positions were struck as chords', () => {
    const choice: ExerciseChoice = { ...SCALE, form: 'arpeggio', octaves: 2 };
    const report = tellOf({ times: 2, rhythm: 'even', blocked: true, then: ['even'] }, { choice, bpm: 60 });
    expect(practisedIn(report).outcome, report.words.verdict).toBe('done');
    expect(report.words.practice!.intention).toEqual({ times: 2, rhythm: 'even' });
  });

  it('the other hand, where each plays by itself, then both', () => {
    const apart: Intention = { times: 2, rhythm: 'even', apart: true };
    const left: ExerciseChoice = { ...SCALE, hands: 'left' };
    const first = tellOf(apart, { choice: left });
    expect(nextOf(first)).toMatchObject({ step: 'practise', hands: 'right', intention: apart });
    const second = tellOf(apart, { options: { earlier: [first] } });
    expect(nextOf(second)).toMatchObject({ hands: 'together', intention: { times: 2, rhythm: 'even' } });
  });
});

describe('a ladder of tempi', () => {
  const ladder: Intention = { ...ONCE, ladderBpm: 4 };
  const strays = (step: number): number => 0.09 * [0, 1, -1.8, 1.3, 0.7, -1.9, 0.7][step % 7]!;

  it('goes up a rung where it is done', () => {
    const report = tellOf(ladder, { bpm: 60, options: { targetBpm: 60 } });
    expect(nextOf(report)).toMatchObject({ fromStep: 0, toStep: LAST, tempoBpm: 64, intention: ladder });
    expect(report.words.said!.advice).toMatchObject({ rung: 'up' });
  });

  it.each([
    [80, 72],
    [24, 20],
  ])('goes two back and is over where it is uneven, to 20 at least: from %i to %i', (bpm, tempoBpm) => {
    const report = tellOf(ladder, {
      bpm,
      lateSec: (step) => (80 / bpm) * strays(step),
      options: { targetBpm: bpm },
    });
    expect(report.words.said!.advice, report.words.verdict).toMatchObject({ rung: 'back' });
    expect(nextOf(report)).toMatchObject({ tempoBpm, intention: ONCE });
  });
});

describe('after work that is not done', () => {
  const long = part(2, 6, { times: 3, rhythm: 'long-short' });

  it.each([
    ['nearly', 2, 100, 100],
    ['not yet', 1, 100, 85],
    ['not yet, of somebody slow', 1, 44, 40],
    ['not yet, of somebody very slow', 1, 30, 30],
  ])('comes the same once more: %s, %i of three times, at %i', (_, copies, targetBpm, tempoBpm) => {
    const report = tellOf(part(2, 6, { times: 3 }), { copies, bpm: targetBpm, options: { targetBpm } });
    expect(practisedIn(report).outcome).toBe(copies === 2 ? 'nearly' : 'not-yet');
    expect(nextOf(report)).toMatchObject({ tempoBpm, intention: part(2, 6, { times: 3 }) });
  });

  it('at the tempo that was played where none was aimed at', () => {
    expect(nextOf(tellOf(long, { copies: 2, bpm: 90 }))).toMatchObject({ tempoBpm: 90 });
  });
});

describe('what an intention lacks', () => {
  const lacks = (intention: Intention, way: Way = {}) => practisedIn(tellOf(intention, way)).lacks;

  it.each([
    ['long-short', 1.71, []],
    ['long-short', 1.69, [{ kind: 'rhythm', turned: false }]],
    ['long-short', 0.6, [{ kind: 'rhythm', turned: false }]],
    ['long-short', 0.57, [{ kind: 'rhythm', turned: true }]],
    ['short-long', 1.71, []],
    ['short-long', 1.69, [{ kind: 'rhythm', turned: false }]],
  ] as const)(
    'is a rhythm under 1.7 to 1, turned where that holds the other way: %s as %f to 1',
    (rhythm, longToShort, lacking) => {
      expect(lacks({ times: 1, rhythm }, { longToShort })).toMatchObject(lacking);
    },
  );

  it.each([
    [0.16, []],
    [0.14, [{ kind: 'holds', group: 3 }]],
  ])('is held notes of less than one and a half steps: by %f s more than 0.3', (lateSec, lacking) => {
    const held = (step: number): number => (step % 3 === 1 ? lateSec - 0.3 : 0);
    expect(lacks({ times: 1, rhythm: 'groups-of-3' }, { lateSec: held })).toMatchObject(lacking);
  });

  it.each([
    ['a quarter faster', part(2, 6), 124, []],
    ['more than a quarter faster', part(2, 6), 126, [{ kind: 'tempo', playedBpm: 126, aimBpm: 100 }]],
    ['slower in slow work', part(2, 6), 60, []],
    ['the whole three hundredths slower', ONCE, 97.2, []],
    ['the whole slower than that', ONCE, 96.8, [{ kind: 'tempo', playedBpm: 97, aimBpm: 100 }]],
    ['a rung slower than that', { ...ONCE, ladderBpm: 4 }, 96.8, [{ kind: 'tempo' }]],
  ])('is the tempo aimed at where it is %s', (_, intention, bpm, lacking) => {
    expect(lacks(intention, { bpm, options: { targetBpm: 100 } })).toMatchObject(lacking);
  });

  it.each<[string, Way, { best: number; atEnd: number }]>([
    ['a wrong note in the second', { wrong: [7] }, { best: 2, atEnd: 2 }],
    ['a wrong note in the last', { wrong: [17] }, { best: 3, atEnd: 0 }],
    ['a stop in the third', { lateSec: (step) => (step === 13 ? 3 : 0) }, { best: 2, atEnd: 1 }],
    ['nothing', {}, { best: 4, atEnd: 4 }],
  ])('is how often in a row it was right of five times, with %s', (_, way, { best, atEnd }) => {
    const one = practisedIn(tellOf(part(2, 6, { times: 5 }), { copies: 4, ...way }));
    expect(one).toMatchObject({ right: best, rightAtEnd: atEnd });
    expect(one.lacks).toMatchObject([{ kind: 'times', right: best, wanted: 5 }]);
  });

  it.each([
    ['nothing is right', [0], 0],
    ['a wrong note in the second of two notes', [2], 0],
    ['a wrong note among three', [5], 2],
    ['a wrong note among five', [18], 4],
  ])('is the length that it came to, one note more each time: %s', (_, wrong, right) => {
    const intention = part(2, 6, { times: 2, rhythm: 'one-note-more' });
    expect(lacks(intention, { wrong })).toMatchObject([{ kind: 'length', right, wanted: 5 }]);
  });
});

describe('touch and loudness that were meant', () => {
  const told = (intention: Partial<Intention>, way: Way) => {
    const { touch, loudness, lacks } = practisedIn(tellOf({ ...ONCE, ...intention }, way));
    return { outcome: (touch ?? loudness)?.outcome, bent: loudness?.bent ?? null, lacking: lacks.length > 0 };
  };
  const as = (outcome: string, bent: string | null = null) => ({
    outcome,
    bent,
    lacking: outcome === 'not-so',
  });

  // Two notes a beat at 100: 300 ms from note to note, of which the dampers leave ± 30 ms unsure, 70 ms at 99 %.
  it.each([
    ['legato', 29, 'so'],
    ['legato', 31, 'untold'],
    ['legato', 99, 'untold'],
    ['legato', 101, 'not-so'],
    ['detached', 31, 'so'],
    ['detached', 29, 'untold'],
    ['detached', -39, 'untold'],
    ['detached', -41, 'not-so'],
    ['staccato', 121, 'so'],
    ['staccato', 119, 'untold'],
    ['staccato', 51, 'untold'],
    ['staccato', 49, 'not-so'],
  ] as const)('%s, with gaps of %i ms of 300: %s', (touch, gapMs, outcome) => {
    expect(told({ touch }, { overlapMs: -gapMs })).toEqual(as(outcome));
  });

  it.each([
    ['growing', 4.01, 'so'],
    ['growing', 3.99, 'not-so'],
    ['growing', -4.01, 'not-so'],
    ['fading', -4.01, 'so'],
    ['fading', -3.99, 'not-so'],
  ] as const)('%s, by %f dB from the first note to the last: %s', (loudness, growsDb, outcome) => {
    const way = { levelDb: (step: number) => (growsDb * step) / LAST };
    expect(told({ loudness }, way)).toEqual(as(outcome));
  });

  it.each([
    ['accents-of-2', 2, 2.01, 'so'],
    ['accents-of-2', 2, 1.99, 'not-so'],
    ['accents-of-3', 3, 2.01, 'so'],
    ['accents-of-4', 4, 1.99, 'not-so'],
    ['accents-of-4', 4, -9, 'not-so'],
  ] as const)('%s, each of %i notes louder by %f dB: %s', (loudness, every, byDb, outcome) => {
    const way = { levelDb: (step: number) => (step % every === 0 ? byDb : 0) };
    expect(told({ loudness }, way)).toEqual(as(outcome));
  });

  // One register of a piano may be louder than the other by 2 dB, one standard deviation: 4.66 dB at 99 %.
  it.each([
    ['left-over-right', 3.01, 'so'],
    ['left-over-right', 2.99, 'untold'],
    ['left-over-right', -1.65, 'untold'],
    ['left-over-right', -1.67, 'not-so'],
    ['right-over-left', -3.01, 'so'],
    ['right-over-left', 1.67, 'not-so'],
  ] as const)('%s, the left hand louder by %f dB: %s', (loudness, leftDb, outcome) => {
    const way: Way = {
      choice: { ...SCALE, hands: 'together' },
      levelDb: (_, { hand }) => (hand === 'left' ? leftDb : 0),
    };
    expect(told({ loudness }, way)).toEqual(as(outcome));
  });

  it.each(['p', 'mf', 'f'] as const)('%s cannot be told: it is as loud as the device is near', (loudness) => {
    expect(told({ loudness }, {})).toEqual(as('untold'));
  });

  describe('growing on one way, on a piano whose keys are known', () => {
    const keyDb = (midi: number): number => (7 * midi) % 5;
    const keys = Object.fromEntries(
      Array.from({ length: 128 }, (_, midi) => [
        midi,
        { levelDb: { value: keyDb(midi), plusMinus: 0, count: 20 } },
      ]),
    );
    const piano: PianoProfile = { version: 1, tuningCents: { value: 0, plusMinus: 1, count: 100 }, keys };

    it.each([
      [10, 2.4, null],
      [10, 2.6, 'early'],
      [10, -2.4, null],
      [10, -2.6, 'late'],
      [-10, 2.6, 'late'],
      [-10, -2.6, 'early'],
    ] as const)('by %i dB, its middle %f dB off the line: %s', (growsDb, bowDb, bent) => {
      const report = tellOf(part(0, 7, { loudness: growsDb > 0 ? 'growing' : 'fading' }), {
        options: { piano },
        levelDb: (step, { midi }) => {
          const place = step / 7;
          return keyDb(midi) + growsDb * place + 4 * bowDb * place * (1 - place);
        },
      });
      expect(practisedIn(report).loudness, report.words.verdict).toMatchObject({ outcome: 'so' });
      expect(practisedIn(report).loudness!.bent ?? null).toBe(bent);
    });
  });
});
