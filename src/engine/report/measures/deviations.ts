import { median } from '../../base/statistics.ts';
import type { Exercise } from '../../exercise/index.ts';
import type { Timeline } from '../../timeline/index.ts';
import type { IntervalDeviation } from '../types.ts';
import { justNoticeableMs } from '../criteria/index.ts';
import { notMeasured } from './estimate.ts';
import type { Figure } from '../types.ts';
import type { Interval } from './strikes.ts';

/**
 * How late the note at the end of each interval is in the pulse that was being played, ms (+: late): its distance from its tick
 * (`engine/timeline`), so that the figures call late what the picture shows late. Where one note alone is late, the next is not
 * early, though the interval between them is short. Audible: above the just-noticeable difference and above twice the listener's
 * own noise, so that the listener's error is never called the player's.
 */
export function deviationsOf(
  intervals: readonly Interval[],
  timeline: Timeline,
): readonly IntervalDeviation[] {
  const lateSec = new Map(timeline.strikes.map((strike) => [strike.step, strike.lateSec]));
  return intervals.map(({ step, ioiMs, beats, noiseVariance }) => {
    const deviationMs = 1000 * lateSec.get(step)!;
    const audible =
      Math.abs(deviationMs) >
      Math.max(justNoticeableMs(1000 * timeline.beatSec! * beats), 2 * Math.sqrt(noiseVariance) * beats);
    return { step, ioiMs, deviationMs, audible };
  });
}

/** Deviation of the interval that leaves the turn at the top (+: the top note was held too long), ms. */
export function turnDeviationMs(
  deviations: readonly IntervalDeviation[],
  intervals: readonly Interval[],
  exercise: Exercise,
): Figure {
  const turn = exercise.steps.find((step) => step.turn)?.step;
  return turn === undefined
    ? notMeasured({ notice: 'no-turn' })
    : deviationInto(deviations, intervals, turn + 1, 'turn');
}

/** Deviation of the interval from the first step to the second, ms. */
export function firstIntervalDeviationMs(
  deviations: readonly IntervalDeviation[],
  intervals: readonly Interval[],
): Figure {
  return deviationInto(deviations, intervals, 1, 'first');
}

/** Deviation of the interval into the last step, ms. */
export function lastIntervalDeviationMs(
  deviations: readonly IntervalDeviation[],
  intervals: readonly Interval[],
  exercise: Exercise,
): Figure {
  return deviationInto(deviations, intervals, exercise.steps.length - 1, 'last');
}

/**
 * At both ends the pulse has notes to one side only, and where it is thought to go on depends on each of them: so much of the scatter
 * of the others, and of the interval's own noise, is in the error (288 rendered attempts of the development piano).
 */
const AT_THE_END = { ofScatter: 0.25, ofNoise: 1.1 } as const;
/** median distance → SD of a normal distribution */
const GAUSSIAN = 1.4826;

function deviationInto(
  deviations: readonly IntervalDeviation[],
  intervals: readonly Interval[],
  step: number,
  which: 'first' | 'last' | 'turn',
): Figure {
  const interval = intervals.find((candidate) => candidate.step === step);
  const deviation = deviations.find((candidate) => candidate.step === step);
  if (interval === undefined || deviation === undefined)
    return notMeasured({ notice: 'interval-not-whole', which });
  const noiseMs = Math.sqrt(interval.noiseVariance) * interval.beats;
  if (which === 'turn') return { value: deviation.deviationMs, plusMinus: noiseMs };
  const strays = deviations.filter((one) => one !== deviation).map((one) => Math.abs(one.deviationMs));
  const scatterMs = noiseMs === 0 ? 0 : GAUSSIAN * (median(strays) ?? 0);
  return {
    value: deviation.deviationMs,
    plusMinus: Math.hypot(AT_THE_END.ofNoise * noiseMs, AT_THE_END.ofScatter * scatterMs),
  };
}
