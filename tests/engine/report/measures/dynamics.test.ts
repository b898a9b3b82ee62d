import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../../src/engine/exercise/index.ts';
import { differenceWithin, dynamicsOf } from '../../../../src/engine/report/measures/dynamics.ts';
import type { Dynamics } from '../../../../src/engine/report/measures/dynamics.ts';
import { played } from '../../match/simulated.ts';

// Of each key the mean is taken out: x is −1.5 … 1.5 about it, twice, and what is left over goes +1, −1, −1, +1, which is at no slope.
const LEFT_OVER = [1, -1, -1, 1];
const notes = [0, 1, 2, 3, 4, 5, 6, 7].map((step) => ({
  step,
  key: step < 4 ? 'C' : 'G',
  levelDb: 2 * step + LEFT_OVER[step % 4]! + (step < 4 ? 0 : 30),
}));

describe('a difference of loudness within each key', () => {
  it('has the slope that both keys share, and the ± of what is left, a mean for each key and a slope paid for', () => {
    const { value, plusMinus } = differenceWithin(notes, (step) => step)!;
    expect(value).toBeCloseTo(2, 9);
    // √(8 / (8 − 2 − 1) / 10): squares left over, freedom, squares of x.
    expect(plusMinus).toBeCloseTo(0.4, 9);
  });

  it('is not told of fewer notes, nor where it is the same at all notes of a key', () => {
    expect(differenceWithin(notes.slice(1), (step) => step)).toBeNull();
    expect(differenceWithin(notes, (step) => (step < 4 ? 0 : 1))).toBeNull();
  });
});

const expected = buildExercise({ key: 'C major', form: 'scale', hands: 'right', octaves: 1 }).steps[0]!
  .notes[0]!;
/** One hand on a piano whose keys are known, a level (dB) for each step; the hand turns at step `turn`. */
function dynamicsOfLevels(levels: readonly number[], turn?: number): Dynamics {
  const loudness = levels.map((levelDb, step) => ({
    step,
    levelDb,
    levelSdDb: 0,
    aboveLineDb: 0,
    key: { step, timeSec: step, played: played(step, 60), expected, right: true, onsetSdMs: 0, levelSdDb: 0 },
  }));
  return dynamicsOf([{ hand: 'right', loudness }], turn, levels.length - 1, true);
}
const about = (value: number, plusMinus = 0) => ({
  value: expect.closeTo(value, 9),
  plusMinus: expect.closeTo(plusMinus, 9),
});

describe('a swell', () => {
  // 1.5 dB a step for four steps, and back to where it began in eight of 0.75 dB: 6 dB from either end to the turn.
  const SWELL = [0, 1.5, 3, 4.5, 6, 5.25, 4.5, 3.75, 3, 2.25, 1.5, 0.75, 0];

  it('is the difference from either end to the turn, however long the way there and back', () => {
    expect(dynamicsOfLevels(SWELL, 4).swellDb).toEqual(about(6));
    expect(dynamicsOfLevels([...SWELL].reverse(), 8).swellDb).toEqual(about(6));
  });

  it('is not told where nothing turns', () => {
    expect(dynamicsOfLevels(SWELL).swellDb).toBeNull();
  });
});

describe('a course', () => {
  it('is the difference from the first step to the last', () => {
    expect(dynamicsOfLevels([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4], 4).courseDb).toEqual(about(4));
  });
});

describe('accents in groups', () => {
  const accentsOf = (...levels: readonly number[]) =>
    dynamicsOfLevels(Array.from({ length: 24 }, (_, step) => levels[step % levels.length]!)).accents;

  it.each([
    [2, 1, [0, 3]],
    [3, 0, [3, 0, 0]],
    [4, 2, [0, 0, 3, 0]],
  ])('come every %i notes, from note %i on, where nothing else varies: %j dB', (every, from, levels) => {
    expect(accentsOf(...levels)).toEqual({ every, from, byDb: about(3) });
  });

  it('are those that come most clearly, not those that are largest', () => {
    // The first of four is 4 − (0 + 2 + 0) / 3 = 3.3 dB louder, with 6 · 8/3 = 16 dB² left over among the others: 8.3 times its ±.
    // Every second is 3 dB louder, with 12 dB² left over: ± √(12 / (24 − 2) / 6), 9.9 times.
    expect(accentsOf(4, 0, 2, 0)).toEqual({ every: 2, from: 0, byDb: about(3, Math.sqrt(1 / 11)) });
  });
});
