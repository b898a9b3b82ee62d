import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allChoices, isRecognised } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { heardIn, sortPassages } from '../../../src/engine/sorting/index.ts';
import type { SortedPassage } from '../../../src/engine/sorting/index.ts';
import { heardOf, played } from '../match/simulated.ts';
import { asWritten, later, line, sitting } from './sittings.ts';
import type { Piece } from './sittings.ts';

const CHOICES = allChoices().filter(isRecognised);
const anyChoice = fc.integer({ min: 0, max: CHOICES.length - 1 }).map((index) => CHOICES[index]!);
const seconds = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const ARPEGGIO: ExerciseChoice = { key: 'F minor', form: 'arpeggio', hands: 'right', octaves: 2 };
const PROGRESSION: ExerciseChoice = { key: 'A major', form: 'progression', hands: 'right', octaves: 1 };
const TUNE = [67, 67, 69, 67, 72, 71, 67, 67, 69, 67, 74, 72];

/** One hand alone is told by its register, and "left" in its own place is what sounds like "right" an octave lower. */
function saidOf({ recognition: { choice, octaveShift } }: SortedPassage) {
  if (choice === null) return null;
  const { key, form, octaves, minorScale } = choice;
  const right = choice.hands === 'left' ? octaveShift - 1 : octaveShift;
  return { key, form, octaves, minorScale, both: choice.hands === 'together', right };
}

function truthOf({ key, form, octaves, minorScale, hands }: ExerciseChoice, shift = 0) {
  return {
    key,
    form,
    octaves,
    minorScale,
    both: hands === 'together',
    right: hands === 'left' ? shift - 1 : shift,
  };
}

function choicesOf(pieces: readonly Piece[]): readonly (ExerciseChoice | null)[] {
  return sortPassages(sitting(pieces).heard).map(({ recognition }) => recognition.choice);
}

describe('a recording of several exercises', () => {
  it('gives them back, each with its first and last note and nothing of its neighbours', () => {
    const one = fc.record({ choice: anyChoice, afterSec: seconds(0.8, 12), stepSec: seconds(0.2, 1) });
    fc.assert(
      fc.property(fc.array(one, { minLength: 2, maxLength: 5 }), (attempts) => {
        const { heard, spans } = sitting(
          attempts.map(({ choice, afterSec, stepSec }) => ({
            afterSec: afterSec + stepSec,
            notes: asWritten(choice, 0, stepSec),
          })),
        );
        const found = sortPassages(heard);
        expect(found.map(saidOf)).toEqual(attempts.map(({ choice }) => truthOf(choice)));
        found.forEach(({ startSec, endSec }, at) => {
          const { firstSec, lastSec } = spans[at]!;
          expect(startSec).toBeLessThan(firstSec);
          expect(startSec).toBeGreaterThanOrEqual(
            Math.max(firstSec - 0.6 - 1e-9, spans[at - 1]?.lastSec ?? 0),
          );
          expect(endSec).toBeGreaterThan(lastSec);
          expect(endSec).toBeLessThanOrEqual(
            Math.min(lastSec + 2 + 1e-9, spans[at + 1]?.firstSec ?? Infinity),
          );
        });
      }),
      { numRuns: 20 },
    );
  });

  it('is cut at the same places of the playing wherever it lies in the recording', () => {
    fc.assert(
      fc.property(anyChoice, anyChoice, seconds(0, 100), (first, second, sec) => {
        const { heard } = sitting([
          { afterSec: 2, notes: asWritten(first) },
          { afterSec: 1.5, notes: asWritten(second) },
        ]);
        const moved = heardOf(heard.notes.map((note) => later(note, sec)));
        const places = sortPassages(heard).map(({ startSec, endSec }) => [startSec + sec, endSec + sec]);
        sortPassages(moved).forEach(({ startSec, endSec }, at) => {
          expect(startSec).toBeCloseTo(places[at]![0]!, 6);
          expect(endSec).toBeCloseTo(places[at]![1]!, 6);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('is the same with faint findings between', () => {
    const doubts = fc.array(fc.record({ sec: seconds(0, 40), midi: fc.integer({ min: 30, max: 95 }) }), {
      maxLength: 12,
    });
    fc.assert(
      fc.property(anyChoice, doubts, (choice, doubtful) => {
        const { heard } = sitting([{ afterSec: 2, notes: asWritten(choice) }]);
        const faint = doubtful.map(({ sec, midi }) => played(sec, midi, { confidence: 0.2, levelDb: -40 }));
        const found = sortPassages(heardOf([...heard.notes, ...faint]));
        expect(found.map(saidOf)).toEqual([truthOf(choice)]);
      }),
      { numRuns: 30 },
    );
  });

  it('moves in octaves with the playing', () => {
    fc.assert(
      fc.property(anyChoice, fc.constantFrom(-1, 1), (choice, octaves) => {
        const notes = asWritten(choice, octaves);
        fc.pre(notes.every(({ midi }) => midi >= 21 && midi <= 108));
        const found = sortPassages(sitting([{ afterSec: 1, notes }]).heard);
        expect(found.map(saidOf)).toEqual([truthOf(choice, octaves)]);
      }),
      { numRuns: 30 },
    );
  });
});

describe('where an attempt begins and ends', () => {
  it.each([2, 3, 4])('%i seconds of thinking in the middle leave it one', (sec) => {
    const notes = asWritten(SCALE).map((note, at) => (at < 11 ? note : later(note, sec)));
    expect(choicesOf([{ afterSec: 1, notes }])).toEqual([SCALE]);
  });

  it('the same twice without a pause is two', () => {
    const again = { afterSec: 0.4, notes: asWritten(SCALE) };
    const { heard, spans } = sitting([again, again, again]);
    const found = sortPassages(heard);
    expect(found.map(({ recognition }) => recognition.choice)).toEqual([SCALE, SCALE, SCALE]);
    found.slice(1).forEach(({ startSec }, at) => {
      expect(startSec).toBeGreaterThan(spans[at]!.lastSec);
      expect(found[at]!.endSec).toBeLessThanOrEqual(startSec);
    });
  });

  it('a bar back in the middle is still the same attempt', () => {
    const up = asWritten(SCALE);
    const back = up.slice(8, 12).map((note) => later(note, 4 * 0.4 + 0.8));
    const rest = up.slice(12).map((note) => later(note, 4 * 0.4 + 0.8));
    const { heard } = sitting([{ afterSec: 1, notes: [...up.slice(0, 12), ...back, ...rest] }]);
    const [only, ...others] = sortPassages(heard);
    expect(others).toEqual([]);
    expect(only!.recognition.choice).toEqual(SCALE);
  });

  it('other playing just before and after it is cut away', () => {
    const pieces = [
      { afterSec: 1, notes: line(TUNE) },
      { afterSec: 0.8, notes: asWritten(ARPEGGIO) },
      { afterSec: 1.2, notes: line(TUNE) },
    ];
    const { heard, spans } = sitting(pieces);
    const found = sortPassages(heard);
    expect(found.map(({ recognition }) => recognition.choice)).toEqual([null, ARPEGGIO, null]);
    expect(found[1]!.startSec).toBeGreaterThan(spans[0]!.lastSec);
    expect(found[1]!.endSec).toBeLessThan(spans[2]!.firstSec);
  });

  it('wrong starts before it are none of it', () => {
    const start = { afterSec: 1.5, notes: asWritten(SCALE).slice(0, 4) };
    const { heard, spans } = sitting([start, start, { afterSec: 1.5, notes: asWritten(SCALE) }]);
    const found = sortPassages(heard).filter(({ recognition }) => recognition.choice !== null);
    expect(found.map(({ recognition }) => recognition.choice)).toEqual([SCALE]);
    expect(found[0]!.startSec).toBeGreaterThan(spans[1]!.lastSec);
  });

  it('wrong starts at a progression are none of it, though its first chord comes again', () => {
    const start = { afterSec: 1.5, notes: asWritten(PROGRESSION, 0, 0.6).slice(0, 6) };
    const { heard, spans } = sitting([
      start,
      start,
      { afterSec: 1.5, notes: asWritten(PROGRESSION, 0, 0.6) },
    ]);
    const found = sortPassages(heard).filter(({ recognition }) => recognition.choice !== null);
    expect(found.map(({ recognition }) => recognition.choice)).toEqual([PROGRESSION]);
    expect(found[0]!.startSec).toBeGreaterThan(spans[1]!.lastSec);
  });

  it('a last note struck twice is still inside', () => {
    const notes = [...asWritten(SCALE), played(28 * 0.4 + 0.2, 62)];
    const [only] = sortPassages(
      sitting([
        { afterSec: 1, notes },
        { afterSec: 5, notes: line(TUNE) },
      ]).heard,
    );
    expect(only!.endSec).toBeGreaterThan(1 + 28 * 0.4 + 1.5);
  });
});

describe('what is no attempt', () => {
  it.each<[string, ExerciseChoice, number]>([
    ['a scale', SCALE, 5],
    ['a progression', PROGRESSION, 6],
  ])('three wrong starts at %s, and no more, are other playing', (_, choice, count) => {
    const start = { afterSec: 1.5, notes: asWritten(choice, 0, 0.6).slice(0, count) };
    expect(choicesOf([start, start, start])).not.toContainEqual(expect.objectContaining({ key: choice.key }));
  });

  it.each([
    ['nothing', []],
    ['a knock taken for a note', [40]],
    ['four notes', [60, 62, 64, 65]],
  ])('%s is not told at all', (_, keys) => {
    expect(sortPassages(heardOf(line(keys)))).toEqual([]);
  });

  it('two tunes with a pause between are two pieces of other playing', () => {
    expect(
      choicesOf([
        { afterSec: 1, notes: line(TUNE) },
        { afterSec: 4, notes: line(TUNE) },
      ]),
    ).toEqual([null, null]);
  });
});

describe('the part of what was heard', () => {
  it('has a clock of its own and no note of anything else', () => {
    const heard = heardOf([
      played(1, 60),
      played(2, 62, { releaseSec: 2.25 }),
      played(3, 64, { releaseSec: null }),
    ]);
    const part = heardIn(heard, { startSec: 1.5, endSec: 3.5 });
    expect(part.notes.map(({ timeSec, releaseSec }) => [timeSec, releaseSec])).toEqual([
      [0.5, 0.75],
      [1.5, null],
    ]);
    expect(part.durationSec).toBe(2);
    expect(part.passages).toEqual([{ startSec: 0, endSec: 2 }]);
  });
});
