import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyMarked, atLeast, moreThanThere } from '../../../src/engine/base/exact.ts';

/** n over k, by Pascal's rule. */
const choose = (n: number, k: number): number =>
  k === 0 || k === n ? 1 : choose(n - 1, k - 1) + choose(n - 1, k);

describe('exact probabilities', () => {
  it('of a lady who tells four cups of eight: 1 in 70 for all, 17 in 70 for three or more (Fisher 1935)', () => {
    expect(moreThanThere(4, 4, 0, 4)).toBeCloseTo(1 / 70, 12);
    expect(moreThanThere(3, 4, 1, 4)).toBeCloseTo(17 / 70, 12);
    expect(moreThanThere(0, 4, 4, 4)).toBeCloseTo(1, 12);
  });

  it('of alike events are the binomial’s: five heads of ten or more, 638 in 1024', () => {
    const coins = Array.from({ length: 10 }, () => 0.5);
    expect(atLeast(5, coins)).toBeCloseTo(638 / 1024, 12);
    expect(atLeast(0, coins)).toBeCloseTo(1, 12);
    expect(atLeast(11, coins)).toBe(0);
  });

  it('of an ace in a hand of five from 52 cards: 1 − (48 over 5) / (52 over 5)', () => {
    expect(anyMarked(52, 4, 5)).toBeCloseTo(1 - 1_712_304 / 2_598_960, 12);
    expect(anyMarked(5, 0, 5)).toBe(0);
    expect(anyMarked(5, 2, 4)).toBe(1);
    expect(anyMarked(5, 2, 0)).toBe(0);
  });

  it('of any table are those of counting', () => {
    const upTo = fc.integer({ min: 0, max: 7 });
    fc.assert(
      fc.property(upTo, upTo, upTo, upTo, (a, b, c, d) => {
        const [tries, others, all] = [a + b, c + d, a + c];
        let sum = 0;
        for (let here = a; here <= Math.min(tries, all); here += 1)
          if (all - here <= others) sum += choose(tries, here) * choose(others, all - here);
        expect(moreThanThere(a, tries, c, others)).toBeCloseTo(sum / choose(tries + others, all), 9);
      }),
    );
  });
});
