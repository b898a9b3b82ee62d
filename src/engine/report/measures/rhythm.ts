import { stepMs } from '../../exercise/index.ts';
import type { Exercise } from '../../exercise/index.ts';
import type { Interval } from './strikes.ts';

/**
 * Intervals of an exercise that is written in a rhythm, or practised in one → as they would be, had it been written even: each a usual step, longer or
 * shorter by as many ms as it strays from the rhythm. What is measured about them is measured about the rhythm meant; the spread of
 * a rhythm is that of its strays against the mean step, so that the short notes of a pair weigh no more than the long ones.
 * Without a rhythm nothing changes.
 */
export function rhythmTakenOut(intervals: readonly Interval[], exercise: Exercise): readonly Interval[] {
  const { practised, choice } = exercise;
  const isInRhythm = practised?.longToShort !== undefined || choice.passage !== undefined;
  if (!isInRhythm || intervals.length === 0) return intervals;
  const beats = intervals.reduce((sum, interval) => sum + interval.beats, 0);
  const beatMs = intervals.reduce((sum, { ioiMs }) => sum + ioiMs, 0) / beats;
  const stepBeats = stepMs(choice, 60_000);
  return intervals.map((interval) => {
    const ioiMs = interval.ioiMs + (stepBeats - interval.beats) * beatMs;
    const noiseVariance = interval.noiseVariance * (interval.beats / stepBeats) ** 2;
    return { ...interval, beats: stepBeats, ioiMs, perBeatMs: ioiMs / stepBeats, noiseVariance };
  });
}
