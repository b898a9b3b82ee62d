import type { Estimate } from '../types.ts';
import type { Interval } from './strikes.ts';

/** What the listener's errors add to each of a row of values. */
export interface Noise {
  readonly variance: number;
  /** intervals that share an onset err to opposite sides; levels, and hands at each step, by themselves */
  readonly neighbours: 'share an onset' | 'apart';
}

/** Mean range of k values of a normal distribution of SD 1, k = 0…5 (Tippett 1925, table; memory); the largest lies half of it over their mean. */
export const MEAN_RANGE: readonly number[] = [0, 0, 1.128, 1.693, 2.059, 2.326];

/** The noise is known of the development piano; on others its variance is another by about so much. */
const VARIANCE_UNSURE = 0.4;

/**
 * Large errors are more frequent than a normal distribution has them: kurtosis beyond its 3 of the ear's onsets, 6 alone, 9 between
 * the hands, 11 of a strike of both (2500 strikes of the development piano). What a few of them add to a variance of n values is n times more unsure.
 */
const TAILS = 8;

/** So much of that SD holds three in four errors of a scatter of intervals (302 attempts of the development piano: 78 % lay within all of it). */
const OF_INTERVALS = 0.88;

/**
 * A standard deviation with the listener's share taken out, and its ±.
 *
 * `deviations` from their mean or line, with `freedom` degrees of freedom. Independent onset noise of SD σ adds 2σ² to the
 * variance of intervals and gives neighbours a correlation of −0.5 (Wing & Kristofferson 1973, memory). So with
 * v the noise variance of one value, S² = s² − v, and about the same playing heard again and again
 * Var(s²) = (4 (dᵀΣd − tr Σ²) + 2 tr Σ²) / freedom² + (0.4 v)², Σ having v on and, for intervals, −v/2 beside its diagonal: a
 * quadratic form in Gaussian noise, d as heard having its share of it, and what is not known of the noise itself. The ± is half
 * the width from √(S² − sd) to √(S² + sd), of intervals somewhat less.
 */
export function spreadWithoutNoise(
  deviations: readonly number[],
  { variance: noise, neighbours }: Noise,
  freedom: number,
): Estimate {
  const squares = deviations.reduce((sum, value) => sum + value * value, 0);
  const shared = neighbours === 'apart' ? 0 : 0.5;
  const products = deviations.slice(1).reduce((sum, value, index) => sum + value * deviations[index]!, 0);
  const variance = Math.max(0, squares / freedom - noise);
  const ofNoise = noise ** 2 * (deviations.length + 2 * shared ** 2 * (deviations.length - 1));
  const withSignal = Math.max(0, noise * (squares - 2 * shared * products) - ofNoise);
  const ofTails = TAILS * noise ** 2 * deviations.length;
  const chance = (4 * withSignal + 2 * ofNoise + ofTails) / freedom ** 2;
  const sd = Math.sqrt(chance + (VARIANCE_UNSURE * noise) ** 2);
  const plusMinus = (Math.sqrt(variance + sd) - Math.sqrt(Math.max(0, variance - sd))) / 2;
  const told = neighbours === 'apart' ? 1 : OF_INTERVALS;
  return { value: Math.sqrt(variance), plusMinus: told * plusMinus };
}

/** Mean noise variance of one interval, (ms a beat)². */
export function meanNoise(intervals: readonly Interval[]): number {
  return intervals.reduce((sum, interval) => sum + interval.noiseVariance, 0) / intervals.length;
}
