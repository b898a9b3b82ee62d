import { describe, expect, it } from 'vitest';
import { driftPercent } from '../../../../src/engine/report/measures/drift.ts';
import type { Interval } from '../../../../src/engine/report/measures/strikes.ts';
import { tempoBpm } from '../../../../src/engine/report/measures/tempo.ts';

/** Intervals of a beat each, ms, as an ear hears them whose noise has this variance, ms². */
const intervals = (perBeatMs: readonly number[], noiseVariance = 0): readonly Interval[] =>
  perBeatMs.map((ioiMs, at) => ({
    step: at + 1,
    fromStep: at,
    beats: 1,
    atBeat: at + 0.5,
    ioiMs,
    perBeatMs: ioiMs,
    intoCrossing: false,
    noiseVariance,
  }));

describe('± of the tempo', () => {
  // σ = 10 ms, n = 5, quartiles at 460 and 540 ms: s = 80 / 1.349 = 59.3 ms. Of the middle one exchanged, 0.88 √(2 σ s / n) =
  // 13.55 ms; of itself, 0.65 σ = 6.5 ms; together 13.55 · 6.5 / √(13.55² + 6.5²) = 5.861 ms, of 500 ms.
  it('is that of the median, by the ear’s noise and the middle half of the values', () => {
    const { value, plusMinus } = tempoBpm(intervals([420, 460, 500, 540, 580], 100)) as Measured;
    expect(value).toBeCloseTo(120, 9);
    expect(plusMinus).toBeCloseTo((120 * 5.861) / 500, 3);
  });

  it('does not grow with the slowest and the quickest', () => {
    const { plusMinus } = tempoBpm(intervals([300, 460, 500, 540, 700], 100)) as Measured;
    expect(plusMinus).toBeCloseTo((120 * 5.861) / 500, 3);
  });
});

describe('± of the drift', () => {
  // Left over 10, −20, 20, −20, 20, −20, 10 ms about 500 ms, which lies on no line but a level one: 2200 ms² of 7 − 2 freedoms, beats
  // −3 … 3 with 28 squares: SD of the slope √(2200 / 5 / 28) = 3.964 ms. Neighbours go against each other, by a quarter at most; of the
  // beats they go with each other by 16 / 28: √(1 − 2 · ¼ · 4/7) = √(5/7). From first to last six beats, of 500 ms.
  it('is that of the slope, less what neighbours take from each other', () => {
    const alternating = [10, -20, 20, -20, 20, -20, 10].map((ms) => 500 + ms);
    const { value, plusMinus } = driftPercent(intervals(alternating)) as Measured;
    expect(value).toBeCloseTo(0, 9);
    expect(plusMinus).toBeCloseTo((100 * Math.sqrt(2200 / 5 / 28) * Math.sqrt(5 / 7) * 6) / 500, 9);
  });
});

interface Measured {
  readonly value: number;
  readonly plusMinus: number;
}
