import { describe, expect, it } from 'vitest';
import { mean, median, middle } from '../../../src/engine/base/statistics.ts';
import { createRandom } from '../../support/random.ts';

describe('the middle of a scatter', () => {
  it.each<readonly [string, readonly number[], number | undefined]>([
    ['nothing', [], undefined],
    ['one value', [3], 3],
    ['two', [1, 4], 2.5],
    // Hollander & Wolfe, Nonparametric Statistical Methods, example 3.3 (Hamilton's depression scale; from memory): −0.46.
    ['nine differences in print', [-0.952, 0.147, -1.022, -0.43, -0.62, -0.59, -0.49, 0.08, -0.01], -0.46],
  ])('of %s', (_, values, expected) => {
    if (expected === undefined) expect(middle(values)).toBeUndefined();
    else expect(middle(values)).toBeCloseTo(expected, 3);
  });

  it('is deaf to a stray value, as a mean is not', () => {
    const values = [10, 11, 9, 10, 12, 8, 1000];
    expect(Math.abs(middle(values)! - 10)).toBeLessThan(1);
    expect(mean(values)).toBeGreaterThan(100);
  });

  it('scatters less than a median does: by some 1.2 (π/3 against π/2 as variances)', () => {
    const random = createRandom(3);
    const tries = Array.from({ length: 2000 }, () => Array.from({ length: 15 }, () => random.normal(1)));
    const squares = (of: (values: readonly number[]) => number | undefined): number =>
      tries.reduce((sum, values) => sum + of(values)! ** 2, 0);
    const times = Math.sqrt(squares(median) / squares(middle));
    expect(times).toBeGreaterThan(1.1);
    expect(times).toBeLessThan(1.3);
  });
});
