import type { Exercise } from '../../exercise/index.ts';
import type { Passage } from '../../listen/index.ts';
import type { Filled } from './substitutes.ts';
import { stepOnsets } from './substitutes.ts';
import type { Run } from './runs.ts';
import { sharedOctaves } from './notes.ts';
import type { Shift, IndexedNote } from './notes.ts';
import type { BeatSec } from './tempo.ts';
import type { CourseRemark } from '../types.ts';
import { BOUNDS } from '../costs/index.ts';

/** What is to be said of the attempt's course. */
export interface Course {
  readonly exercise: Exercise;
  readonly struck: readonly IndexedNote[];
  readonly filled: readonly Filled[];
  readonly run: Run;
  /** runs broken off before this one, which began again from the top */
  readonly abandoned: readonly Run[];
  /** the stretches of other runs */
  readonly others: readonly Passage[];
  readonly shift: Shift;
  readonly tuningCents: number;
  readonly beatSec: BeatSec;
}

/** The course of an attempt → remarks, in the order in which a listener would make them. */
export function courseRemarks(course: Course): readonly CourseRemark[] {
  const { exercise, struck, filled, run, shift } = course;
  const onsets = stepOnsets(filled, struck);
  const last = exercise.steps.length - 1;
  const remarks: CourseRemark[] = [];
  const octaveShift = sharedOctaves(shift, exercise.choice.hands);
  if (octaveShift !== 0) remarks.push({ kind: 'other-octave', octaveShift });
  if (exercise.choice.hands === 'together')
    for (const hand of ['left', 'right'] as const) {
      const beyond = shift[hand] - octaveShift;
      if (beyond !== 0) remarks.push({ kind: 'other-octave', octaveShift: beyond, hand });
    }
  if (shift.semitones !== 0)
    remarks.push({ kind: 'read-a-semitone-off', cents: course.tuningCents - 100 * shift.semitones });
  const first = onsets[0];
  const end = onsets.at(-1);
  if (first !== undefined && worthSaying(exercise, 0, first.step))
    remarks.push({ kind: 'started-late', firstStep: first.step });
  for (const { answers } of course.abandoned)
    remarks.push({ kind: 'restarted', atStep: answers.at(-1)!.place.step, backToStep: 0 });
  for (const { atStep, backToStep } of run.goingsBack)
    remarks.push({ kind: 'restarted', atStep, backToStep });
  remarks.push(...stops(course));
  if (end !== undefined && worthSaying(exercise, end.step + 1, last + 1))
    remarks.push({ kind: 'broken-off', lastStep: end.step });
  if (course.others.length > 0) remarks.push({ kind: 'played-again', passages: course.others });
  return remarks;
}

/** Steps `from` up to `to` not played at an end: two steps, or one chord, are a beginning or an end left out. */
function worthSaying(exercise: Exercise, from: number, to: number): boolean {
  return to - from >= 2 || (to > from && exercise.steps[from]!.notes.length > 1);
}

/** Where the time from one played step to the next is longer than it should be by more than three beats. */
function stops(course: Course): CourseRemark[] {
  const onsets = stepOnsets(course.filled, course.struck);
  return onsets.slice(1).flatMap((onset, index): CourseRemark[] => {
    const before = onsets[index]!;
    const between = course.struck.filter(
      (note) => note.timeSec > before.timeSec && note.timeSec < onset.timeSec,
    );
    const times = [before.timeSec, ...between.map((note) => note.timeSec), onset.timeSec];
    const gapSec = Math.max(...times.slice(1).map((time, at) => time - times[at]!));
    const dueSec = between.length > 0 ? 0 : (onset.beat - before.beat) * course.beatSec(before.timeSec);
    const stopped = gapSec - dueSec > BOUNDS.stopBeats * course.beatSec(before.timeSec);
    return stopped ? [{ kind: 'stopped', atStep: before.step, gapSec }] : [];
  });
}
