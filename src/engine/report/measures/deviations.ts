import { median } from '../../base/statistics.ts';
import type { Exercise } from '../../exercise/index.ts';
import type { IntervalDeviation } from '../types.ts';
import { justNoticeableMs } from './audible.ts';
import { notMeasured } from './estimate.ts';
import type { Figure } from './estimate.ts';
import type { Interval } from './strikes.ts';

/**
 * Each interval against the median one, ms (+: late). Audible: the deviation is above the just-noticeable difference and
 * above twice the listener's own noise, so that the listener's error is never called the player's.
 */
export function deviationsOf(intervals: readonly Interval[]): readonly IntervalDeviation[] {
  const middle = median(intervals.map((interval) => interval.perBeatMs));
  if (middle === undefined) return [];
  return intervals.map(({ step, ioiMs, beats, noiseVariance }) => {
    const deviationMs = ioiMs - middle * beats;
    const audible =
      Math.abs(deviationMs) >
      Math.max(justNoticeableMs(middle * beats), 2 * Math.sqrt(noiseVariance) * beats);
    return { step, ioiMs, deviationMs, audible };
  });
}

/** Deviation of the interval that leaves the turn at the top (+: the top note was held too long), ms. */
export function turnDeviationMs(intervals: readonly Interval[], exercise: Exercise): Figure {
  const turn = exercise.steps.find((step) => step.turn)?.step;
  return turn === undefined
    ? notMeasured('this exercise has no turn')
    : deviationInto(intervals, turn + 1, 'the interval after the turn was not heard whole');
}

/** Deviation of the interval from the first step to the second, ms. */
export function firstIntervalDeviationMs(intervals: readonly Interval[]): Figure {
  return deviationInto(intervals, 1, 'the first interval was not heard whole');
}

/** Deviation of the interval into the last step, ms. */
export function lastIntervalDeviationMs(intervals: readonly Interval[], exercise: Exercise): Figure {
  return deviationInto(intervals, exercise.steps.length - 1, 'the last interval was not heard whole');
}

function deviationInto(intervals: readonly Interval[], step: number, reason: string): Figure {
  const interval = intervals.find((candidate) => candidate.step === step);
  const deviation = deviationsOf(intervals).find((candidate) => candidate.step === step);
  if (interval === undefined || deviation === undefined) return notMeasured(reason);
  return {
    value: deviation.deviationMs,
    plusMinus: Math.sqrt(interval.noiseVariance) * interval.beats,
  };
}
