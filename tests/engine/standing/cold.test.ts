import { describe, expect, it } from 'vitest';
import { coldAgainstBest, type ExerciseChoice } from '../../../src/engine/index.ts';
import { DAY_MS, NOW_MS, summary } from './history.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
/** Attempts of each day, by how much their time varied. */
const days = (...made: readonly (readonly (number | null)[])[]) =>
  coldAgainstBest(
    made.flatMap((day, at) =>
      day.map((evennessPercent, index) => ({
        whenMs: NOW_MS + at * DAY_MS + index * 60_000,
        summary: summary(SCALE, { evennessPercent }),
      })),
    ),
  );

describe('the first try of a day against the best', () => {
  it('is the middle one of the last five days', () => {
    expect(days([20, 1], [9, 5], [8, 4], [10, 6], [7, 5], [9, 3])).toEqual({
      days: 5,
      coldPercent: 9,
      bestPercent: 5,
    });
  });

  it('says nothing of days with one try, of tries that were not measured, and of fewer than three days', () => {
    expect(days([9, 5], [8], [null, 4], [7, 5])).toBeNull();
    expect(days([9, 5], [8, 8], [null, 7, 4])).toMatchObject({ days: 3, coldPercent: 8, bestPercent: 5 });
    expect(days()).toBeNull();
  });
});
