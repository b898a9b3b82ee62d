import { LEAST_INTERVALS, tooFew } from './evenness.ts';
import type { Figure } from '../types.ts';
import { lineThrough } from './line.ts';
import type { Interval } from './strikes.ts';

/**
 * Drift: change of the interval along the straight line through q over the attempt, per cent from the first to the last
 * (+: it slows down). The ± is that of the slope, from the scatter about the line, so an uneven attempt has an unsure drift.
 * Hand over the intervals that lead into no crossing: late crossings on the way up alone would tilt the line (this deviates
 * from a line through all intervals and brings the figure nearer to 0 there).
 */
export function driftPercent(intervals: readonly Interval[]): Figure {
  if (intervals.length < LEAST_INTERVALS) return tooFew(intervals);
  const beats = intervals.map((interval) => interval.atBeat);
  const line = lineThrough(
    beats,
    intervals.map((interval) => interval.perBeatMs),
  );
  if (line === undefined) return tooFew(intervals);
  const first = line.intercept + line.slope * beats[0]!;
  const span = beats.at(-1)! - beats[0]!;
  if (first <= 0) return tooFew([]);
  return {
    value: (100 * line.slope * span) / first,
    plusMinus: (100 * line.slopeSd * span) / first,
  };
}

/** The tempo at both ends of that line, beats a minute; undefined where the drift is not measured. */
export function driftTempi(
  intervals: readonly Interval[],
): { readonly fromBpm: number; readonly toBpm: number } | undefined {
  const beats = intervals.map((interval) => interval.atBeat);
  const line = lineThrough(
    beats,
    intervals.map((interval) => interval.perBeatMs),
  );
  if (line === undefined) return undefined;
  const first = line.intercept + line.slope * beats[0]!;
  const last = line.intercept + line.slope * beats.at(-1)!;
  return first > 0 && last > 0 ? { fromBpm: 60_000 / first, toBpm: 60_000 / last } : undefined;
}
