import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutSilences } from '../../../src/ui/plots/pearls/warp.ts';

describe('cut silences', () => {
  const onsets = fc
    .array(fc.double({ min: 0, max: 60, noNaN: true }), { minLength: 2, maxLength: 40 })
    .map((times) => [...times].sort((a, b) => a - b));

  it('never put one moment before an earlier one, and keep what is not cut', () => {
    fc.assert(
      fc.property(onsets, (times) => {
        const { drawnSec } = cutSilences(times, 2, 1);
        for (let i = 1; i < times.length; i += 1) {
          const real = times[i]! - times[i - 1]!;
          const drawn = drawnSec(times[i]!) - drawnSec(times[i - 1]!);
          expect(drawn).toBeCloseTo(real > 2 ? 1 : real, 6);
        }
      }),
    );
  });

  it('say how long the silence was', () => {
    expect(cutSilences([0, 1, 6], 2, 1).cuts).toEqual([{ fromSec: 1.5, toSec: 5.5, silenceSec: 5 }]);
  });
});
