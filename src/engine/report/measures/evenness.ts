import { mean, median } from '../../base/statistics.ts';
import { notMeasured } from './estimate.ts';
import type { Figure } from '../types.ts';
import { lineThrough } from './line.ts';
import { meanNoise, spreadWithoutNoise } from './noise.ts';
import type { Noise } from './noise.ts';
import type { Interval } from './strikes.ts';

/** Fewer intervals than this say nothing about evenness; the shortest exercise, five chords, has four. */
export const LEAST_INTERVALS = 4;

/**
 * Evenness: 100 · SD(q) / mean(q), per cent, q = IOI / beats between; lower is more even. The listener's timing noise is
 * taken out of the SD. Coefficient of variation as in van Vugt et al. 2012.
 */
export function evennessPercent(intervals: readonly Interval[]): Figure {
  if (intervals.length < LEAST_INTERVALS) return tooFew(intervals);
  const { spread, centre } = spreadOf(intervals);
  return inPercent(spread, centre);
}

/** Evenness as the SD of the intervals in ms, at the exercise's usual step. */
export function evennessMs(intervals: readonly Interval[]): Figure {
  if (intervals.length < LEAST_INTERVALS) return tooFew(intervals);
  const { spread } = spreadOf(intervals);
  const beats = median(intervals.map((interval) => interval.beats))!;
  return { value: spread.value * beats, plusMinus: spread.plusMinus! * beats };
}

/** SD of the intervals about their mean, both ms a beat. */
function spreadOf(intervals: readonly Interval[]) {
  const centre = mean(intervals.map((interval) => interval.perBeatMs))!;
  const deviations = intervals.map((interval) => interval.perBeatMs - centre);
  return {
    centre,
    spread: spreadWithoutNoise(deviations, onsetNoiseOf(intervals), intervals.length - 1),
  };
}

/** Evenness about the straight line through q over the attempt instead of about its mean: 100 · SD(residual) / mean(q), per cent. */
export function evennessDriftRemovedPercent(intervals: readonly Interval[]): Figure {
  if (intervals.length < LEAST_INTERVALS) return tooFew(intervals);
  const values = intervals.map((interval) => interval.perBeatMs);
  const line = lineThrough(
    intervals.map((interval) => interval.atBeat),
    values,
  );
  if (line === undefined) return tooFew(intervals);
  return inPercent(
    spreadWithoutNoise(line.residuals, onsetNoiseOf(intervals), intervals.length - 2),
    mean(values)!,
  );
}

/** Evenness of the intervals that lead into no crossing, per cent. */
export function evennessWithoutCrossingsPercent(intervals: readonly Interval[]): Figure {
  return evennessPercent(intervals.filter((interval) => !interval.intoCrossing));
}

/** Neighbouring intervals share an onset. */
function onsetNoiseOf(intervals: readonly Interval[]): Noise {
  return { variance: meanNoise(intervals), neighbours: 'share an onset' };
}

function inPercent(spread: { value: number; plusMinus?: number }, centre: number): Figure {
  return { value: (100 * spread.value) / centre, plusMinus: (100 * (spread.plusMinus ?? 0)) / centre };
}

export function tooFew(intervals: readonly unknown[]): Figure {
  return notMeasured({ notice: 'needs-intervals', needed: LEAST_INTERVALS, there: intervals.length });
}
