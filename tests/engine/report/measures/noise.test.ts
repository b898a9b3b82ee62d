import { describe, expect, it } from 'vitest';
import { MEAN_RANGE } from '../../../../src/engine/report/measures/noise.ts';

/** Mean range of values of a normal distribution of SD 1: ∫ 1 − Φⁿ − (1 − Φ)ⁿ, added up in steps of 0.001. */
function meanRange(values: number): number {
  const step = 0.001;
  let [below, sum] = [0, 0];
  for (let x = -8; x < 8; x += step) {
    below += (step * Math.exp(-0.5 * (x + step / 2) ** 2)) / Math.sqrt(2 * Math.PI);
    sum += step * (1 - below ** values - (1 - below) ** values);
  }
  return sum;
}

describe('the mean range of normal values', () => {
  it.each([1, 2, 3, 4, 5])('of %d', (values) => {
    expect(MEAN_RANGE[values]).toBeCloseTo(meanRange(values), 3);
  });
});
