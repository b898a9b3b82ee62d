import { median } from '../../base/statistics.ts';
import type { Exercise } from '../../exercise/index.ts';
import { notMeasured } from './estimate.ts';
import type { Figure } from './estimate.ts';
import type { Interval } from './strikes.ts';

/** The change of chord that took longest, against the median of the others. */
export interface SlowChange {
  readonly step: number;
  readonly ratio: number;
  readonly plusMinus: number;
}

/** Intervals between chords → the slowest change: its IOI / median IOI of the other changes. Undefined under three changes. */
export function slowestChange(intervals: readonly Interval[], exercise: Exercise): SlowChange | undefined {
  const changes = intervals.filter((interval) => isChord(exercise, interval.step));
  if (changes.length < 3) return undefined;
  const slowest = changes.reduce((a, b) => (b.perBeatMs > a.perBeatMs ? b : a));
  const usual = median(changes.filter((one) => one !== slowest).map((one) => one.perBeatMs))!;
  return {
    step: slowest.step,
    ratio: slowest.perBeatMs / usual,
    plusMinus: Math.sqrt(slowest.noiseVariance) / usual,
  };
}

/** Worst change of chord against the median of the other changes, ratio of IOIs. */
export function changeHesitationRatio(intervals: readonly Interval[], exercise: Exercise): Figure {
  const slowest = slowestChange(intervals, exercise);
  if (slowest === undefined) return notMeasured('needs three changes of chord');
  return { value: slowest.ratio, plusMinus: slowest.plusMinus };
}

function isChord(exercise: Exercise, step: number): boolean {
  const notes = exercise.steps[step]!.notes;
  return notes.some((note, index) => notes.some((other, at) => at !== index && other.hand === note.hand));
}
