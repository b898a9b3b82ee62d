import { describe, expect, it } from 'vitest';
import { differenceWithin } from '../../../../src/engine/report/measures/dynamics.ts';

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
