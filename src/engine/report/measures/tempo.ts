import { mean, median } from '../../base/statistics.ts';
import { LEAST_INTERVALS, tooFew } from './evenness.ts';
import type { Figure } from '../types.ts';
import { meanNoise } from './noise.ts';
import type { Interval } from './strikes.ts';

/** Tempo: 60 / median(q), beats a minute. ± from the listener's noise; a median of n has π/2n of a single variance. */
export function tempoBpm(intervals: readonly Interval[]): Figure {
  if (intervals.length < LEAST_INTERVALS) return tooFew(intervals);
  const middle = median(intervals.map((interval) => interval.perBeatMs))!;
  const value = 60_000 / middle;
  const sd = Math.sqrt((meanNoise(intervals) * Math.PI) / (2 * intervals.length));
  return { value, plusMinus: (value * sd) / mean(intervals.map((interval) => interval.perBeatMs))! };
}
