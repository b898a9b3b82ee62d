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
  const line = lineAlong(intervals);
  if (line === undefined) return tooFew(intervals);
  const beats = intervals.map(({ atBeat }) => atBeat);
  const span = beats.at(-1)! - beats[0]!;
  const { firstMs: first } = line;
  if (first <= 0) return tooFew([]);
  return {
    value: (100 * line.slope * span) / first,
    plusMinus: (100 * line.slopeSd * againstEachOther(beats, line.residuals) * span) / first,
  };
}

/** Of the fingers' own scatter neighbouring intervals go against each other by half; so much of it is believed of a few. */
const MOST_AGAINST = 0.25;

/**
 * By how much less a slope strays than of values by chance: a note that comes late makes one interval longer and the next shorter
 * (Wing & Kristofferson 1973, memory), which tilts no line. Variance of a least-squares slope with correlated neighbours.
 */
function againstEachOther(beats: readonly number[], residuals: readonly number[]): number {
  const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
  const neighbours = (values: readonly number[]): number => {
    const all = sumOf(values.map((value) => value ** 2));
    return all === 0 ? 0 : sumOf(values.slice(1).map((value, at) => value * values[at]!)) / all;
  };
  const centre = sumOf(beats) / beats.length;
  const along = Math.min(0, Math.max(-MOST_AGAINST, neighbours(residuals)));
  return Math.sqrt(1 + 2 * along * neighbours(beats.map((beat) => beat - centre)));
}

/** The straight line through q, and its ends, ms a beat; undefined of too few. */
function lineAlong(intervals: readonly Interval[]) {
  const beats = intervals.map(({ atBeat }) => atBeat);
  const line = lineThrough(
    beats,
    intervals.map(({ perBeatMs }) => perBeatMs),
  );
  if (line === undefined) return undefined;
  const at = (beat: number): number => line.intercept + line.slope * beat;
  return { ...line, firstMs: at(beats[0]!), lastMs: at(beats.at(-1)!) };
}

/** The tempo at both ends of that line, beats a minute; undefined where the drift is not measured. */
export function driftTempi(
  intervals: readonly Interval[],
): { readonly fromBpm: number; readonly toBpm: number } | undefined {
  const { firstMs = 0, lastMs = 0 } = lineAlong(intervals) ?? {};
  return firstMs > 0 && lastMs > 0 ? { fromBpm: 60_000 / firstMs, toBpm: 60_000 / lastMs } : undefined;
}
