import { LEAST_INTERVALS, tooFew } from './evenness.ts';
import type { Figure } from '../types.ts';
import type { Interval } from './strikes.ts';

/**
 * Normalised pairwise variability index: 100/(m−1) · Σ |d_k − d_{k+1}| / ((d_k + d_{k+1})/2), of m durations in one unit.
 * Grabe & Low 2002. Needs two durations.
 */
export function nPVI(durations: readonly number[]): number {
  const terms = durations
    .slice(1)
    .map((next, index) => Math.abs(durations[index]! - next) / ((durations[index]! + next) / 2));
  return (100 * terms.reduce((sum, term) => sum + term, 0)) / terms.length;
}

/**
 * nPVI of the intervals, q in place of d. The listener's noise is not taken out (it raises a low nPVI); the ± says how far
 * it moves the figure: each pair differs by noise of variance 3v beyond the two intervals' own (neighbours share an onset), so
 * about √(3v)/mean a term, over √m independent terms.
 */
export function nPVIOf(intervals: readonly Interval[]): Figure {
  if (intervals.length < LEAST_INTERVALS) return tooFew(intervals);
  const durations = intervals.map((interval) => interval.perBeatMs);
  const centre = durations.reduce((sum, value) => sum + value, 0) / durations.length;
  const noise = intervals.reduce((sum, { noiseVariance }) => sum + noiseVariance, 0) / intervals.length;
  return {
    value: nPVI(durations),
    plusMinus: (100 * Math.sqrt(3 * noise)) / centre / Math.sqrt(durations.length - 1),
  };
}
