import { mean } from '../../base/statistics.ts';
import { LEAST_INTERVALS, tooFew } from './evenness.ts';
import { meanNoise } from './noise.ts';
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

/** Terms side by side err to the same side: their sum errs by about so much more than of terms apart. */
const SHARED = 1.4;

/**
 * nPVI of the intervals, q in place of d, the listener's share taken out as a variance: two neighbours, which share an onset,
 * differ by noise of variance 3v, whose mean size is √(2/π) of its SD. ±: the noise of m terms, of which neighbours share two onsets, and a quarter of what was taken
 * out, since the noise differs from piano to piano.
 */
export function nPVIOf(intervals: readonly Interval[]): Figure {
  if (intervals.length < LEAST_INTERVALS) return tooFew(intervals);
  const durations = intervals.map((interval) => interval.perBeatMs);
  const told = nPVI(durations);
  const noisePercent = (100 * Math.sqrt(3 * meanNoise(intervals))) / mean(durations)!;
  const value = Math.sqrt(Math.max(0, told ** 2 - (2 / Math.PI) * noisePercent ** 2));
  return {
    value,
    plusMinus: Math.hypot((SHARED * noisePercent) / Math.sqrt(durations.length - 1), (told - value) / 4),
  };
}
