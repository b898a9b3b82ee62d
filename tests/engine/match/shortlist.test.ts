import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import { shortlist } from '../../../src/engine/match/recognise/shortlist.ts';
import { played } from './simulated.ts';

// What is worth following, by keys in common alone; the shares are worked out by hand.

const ARPEGGIO = { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 } as const;
const KEYS = buildExercise(ARPEGGIO).steps.flatMap(({ notes }) => notes.map(({ midi }) => midi));
const SIZE = KEYS.length;

/** The arpeggio’s entry among all that is worth following in these keys, one after the other. */
function entryOf(keys: readonly number[], semitones = 0) {
  const notes = keys.map((midi, at) => played(1 + 0.4 * at, midi));
  return shortlist(notes).filter(
    ({ template: { choice }, ...listed }) =>
      choice.form === 'arpeggio' &&
      choice.octaves === 2 &&
      choice.key === 'C major' &&
      choice.hands !== 'together' &&
      listed.semitones === semitones,
  );
}

describe('an exercise worth following', () => {
  it('has all its keys in common with its own notes', () => {
    const [listed, ...others] = entryOf(KEYS);
    expect(others).toEqual([]);
    expect(listed!.share).toBe(1);
    expect(listed!.from).toBe(0);
    expect(listed!.to).toBeGreaterThanOrEqual(SIZE);
  });

  it('is looked for at every height', () => {
    for (const semitones of [-24, -1, 5, 12])
      expect(
        entryOf(
          KEYS.map((key) => key + semitones),
          semitones,
        )[0]!.share,
      ).toBe(1);
  });

  it('has so many fewer in common as were left out, or struck otherwise', () => {
    const without = KEYS.filter((_, step) => step !== 3);
    expect(entryOf(without)[0]!.share).toBeCloseTo((2 * (SIZE - 1)) / (2 * SIZE - 1), 12);
    const otherwise = KEYS.map((key, step) => (step === 3 ? 107 : key));
    // The window that ends before the strange key’s successors is no better: all of it counts.
    expect(entryOf(otherwise)[0]!.share).toBeCloseTo((2 * (SIZE - 1)) / (2 * SIZE), 12);
  });

  it('is none of which less than half is found', () => {
    // With s of its 13 keys and as many others, 2 s / (13 + 2 s) is 0.5 from s = 6.5 on.
    const half = (right: number): readonly number[] =>
      KEYS.slice(0, right).flatMap((key, at) => [key, 100 + (at % 2)]);
    expect(entryOf(half(7))).toHaveLength(1);
    expect(entryOf(KEYS.slice(0, 4))).toEqual([]);
  });

  it('is looked for where it lies among other notes, with some to spare', () => {
    const other = Array.from({ length: 60 }, (_, at) => 97 + (at % 3));
    const [listed, ...others] = entryOf([...other, ...KEYS, ...other]);
    expect(others).toEqual([]);
    // A window holds 1.15 times its notes: 15.
    expect(listed!.share).toBeCloseTo((2 * SIZE) / (SIZE + 15), 12);
    expect(listed!.from).toBeGreaterThan(60 - 2 * SIZE);
    expect(listed!.from).toBeLessThanOrEqual(60);
    expect(listed!.to).toBeGreaterThanOrEqual(60 + SIZE);
    expect(listed!.to).toBeLessThan(60 + 3 * SIZE);
  });

  it('is looked for twice where it was played twice with much between', () => {
    const other = Array.from({ length: 60 }, (_, at) => 97 + (at % 3));
    const listed = entryOf([...KEYS, ...other, ...KEYS]);
    expect(listed).toHaveLength(2);
    expect(listed[0]!.to).toBeLessThan(listed[1]!.from);
  });

  it('lies on the keyboard, and begins no more than two octaves below the lowest key heard', () => {
    for (const up of [-39, -36, 0, 27]) {
      const keys = KEYS.map((key) => key + up);
      const lowest = Math.min(...keys);
      const listed = shortlist(keys.map((midi, at) => played(1 + 0.4 * at, midi)));
      expect(listed.length).toBeGreaterThan(20);
      for (const { template, semitones } of listed) {
        expect(template.lowest + semitones).toBeGreaterThanOrEqual(Math.max(21, lowest - 24));
        expect(template.highest + semitones).toBeLessThanOrEqual(108);
      }
    }
  });

  it('is none in silence', () => {
    expect(entryOf([])).toEqual([]);
  });
});
