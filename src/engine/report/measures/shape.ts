import { median, standardDeviation } from '../../base/statistics.ts';
import type { Criteria } from '../criteria/index.ts';
import { driftPercent } from './drift.ts';
import { isMeasured } from './estimate.ts';
import type { Interval } from './strikes.ts';

/** Slower by this much at the end than before is a slowing that is heard. Common practice, no source. */
const SLOWED = 1.12;
/** Fewer intervals than this have no shape. */
export const LEAST_WITH_SHAPE = 8;

/** The intervals of the attempt without its ending, and the ending by itself. */
export interface Shape {
  readonly body: readonly Interval[];
  /** the intervals of an ending that slows, or of the one last note */
  readonly ending: readonly Interval[];
}

/** Intervals of an attempt, stops left out → its body and its ending: both by what was meant, so that no ending is blamed. */
export function shapeOfTime(
  intervals: readonly Interval[],
  { driftPercent: steadyPercent }: Criteria,
): Shape {
  const whole = { body: intervals, ending: [] };
  if (intervals.length < LEAST_WITH_SHAPE) return whole;
  const slowing = longestRise(intervals.map(({ perBeatMs }) => perBeatMs));
  const from = intervals.length - Math.max(1, slowing);
  const [body, ending] = [intervals.slice(0, from), intervals.slice(from)];
  const usual = median(body.map(({ perBeatMs }) => perBeatMs))!;
  const spread = standardDeviation(body.map(({ perBeatMs }) => perBeatMs)) ?? 0;
  const last = ending.at(-1)!.perBeatMs;
  const drift = driftPercent(body.filter((interval) => !interval.intoCrossing));
  const steady = !isMeasured(drift) || Math.abs(drift.value) <= steadyPercent;
  return last > SLOWED * usual && last > usual + 3 * spread && steady ? { body, ending } : whole;
}

/** How many of the last values rise, one after the other; under three are none. Of half of all at most. */
function longestRise(values: readonly number[]): number {
  let count = 1;
  while (count < values.length / 2 && values.at(-count)! > values.at(-count - 1)!) count++;
  return count >= 3 ? count : 0;
}
