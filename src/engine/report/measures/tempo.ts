import { mean, median, quantile } from '../../base/statistics.ts';
import { LEAST_INTERVALS, tooFew } from './evenness.ts';
import type { Figure } from '../types.ts';
import { meanNoise } from './noise.ts';
import type { Interval } from './strikes.ts';

/**
 * Tempo: 60 / median(q), beats a minute. ± from the listener's noise: it moves the median by exchanging intervals about it, of
 * which there are the fewer the more the player's own scatter. With noise of SD σ on n values of SD s (by their quartiles), 2σs/n in variance: of
 * two medians the difference is (count that changed sides)/(n f), f = 0.4/s being the density there.
 */
export function tempoBpm(intervals: readonly Interval[]): Figure {
  if (intervals.length < LEAST_INTERVALS) return tooFew(intervals);
  const middle = median(intervals.map((interval) => interval.perBeatMs))!;
  const value = 60_000 / middle;
  const noise = Math.sqrt(meanNoise(intervals));
  const perBeatMs = intervals.map((interval) => interval.perBeatMs);
  const sd = Math.sqrt((2 * noise * Math.max(noise, middleSpread(perBeatMs))) / intervals.length);
  return { value, plusMinus: (value * sd) / mean(perBeatMs)! };
}

/** SD of Gaussian values by the distance of their quartiles, which one stop or a slow ending does not move. */
function middleSpread(values: readonly number[]): number {
  return (quantile(values, 0.75)! - quantile(values, 0.25)!) / 1.349;
}
