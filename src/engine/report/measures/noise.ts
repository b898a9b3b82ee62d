import type { Estimate } from '../types.ts';
import type { Interval } from './strikes.ts';

/**
 * A standard deviation with the listener's share taken out, and its ±.
 *
 * `deviations` from their mean or line, with `freedom` degrees of freedom. Independent onset noise of SD σ adds 2σ² to the
 * variance of intervals and gives neighbours a correlation of −0.5 (Wing & Kristofferson 1973, memory). So with
 * v the noise variance of one interval, S² = s² − v, and about the same playing heard again and again
 * Var(s²) = (4 dᵀΣd + 2 tr Σ²) / freedom², Σ having v on and −v/2 beside its diagonal: a quadratic form in Gaussian noise.
 * The ± is half the width from √(S² − sd) to √(S² + sd).
 */
export function spreadWithoutNoise(
  deviations: readonly number[],
  noiseVariance: number,
  freedom: number,
): Estimate {
  const squares = deviations.reduce((sum, value) => sum + value * value, 0);
  const neighbours = deviations.slice(1).reduce((sum, value, index) => sum + value * deviations[index]!, 0);
  const variance = Math.max(0, squares / freedom - noiseVariance);
  const signal = Math.max(0, noiseVariance * (squares - neighbours));
  const noise = noiseVariance ** 2 * (1.5 * deviations.length - 0.5);
  const sd = Math.sqrt(4 * signal + 2 * noise) / freedom;
  const plusMinus = (Math.sqrt(variance + sd) - Math.sqrt(Math.max(0, variance - sd))) / 2;
  return { value: Math.sqrt(variance), plusMinus };
}

/** Mean noise variance of one interval, (ms a beat)². */
export function meanNoise(intervals: readonly Interval[]): number {
  return intervals.reduce((sum, interval) => sum + interval.noiseVariance, 0) / intervals.length;
}
