import { median, middle } from '../base/statistics.ts';
import { groupOf, LONG_TO_SHORT, practisedExercise } from '../exercise/index.ts';
import type { Practising } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import type { Alignment } from '../match/index.ts';

/** Evenness is measured about the ratio that was played, whatever was meant; one further off than this is none. */
const MOST_RATIO = 8;

/** An interval from step to step, by where it lies in its copy of the stretch. */
interface Gap {
  /** place in its copy of the step that it leads into, from 1 */
  readonly place: number;
  readonly sec: number;
}

/** Alignment of what was practised → the same with the rhythm as it was played: how long the long note, which of a group was held. */
export function asPlayed(heard: Heard, alignment: Alignment): Alignment {
  const { exercise } = alignment;
  const { practised } = exercise;
  if (practised === undefined) return alignment;
  const { rhythm } = practised.intention;
  const gaps = gapsOf(heard, alignment);
  const size = groupOf(rhythm);
  const pairs = rhythm === 'long-short' || rhythm === 'short-long';
  if (!pairs && size === null) return alignment;
  const as: Practising = pairs
    ? { ...practised, longToShort: ratioOf(gaps, rhythm === 'long-short') }
    : { ...practised, heldPlace: heldPlaceOf(gaps, size!) };
  return { ...alignment, exercise: { ...exercise, ...practisedExercise(exercise.choice, as) } };
}

/** Of lines: a step's own time is that of its first key. */
function gapsOf(heard: Heard, { matched, exercise }: Alignment): readonly Gap[] {
  const times = new Map<number, number>();
  for (const note of matched) {
    if (note.verdict !== 'correct' && note.verdict !== 'wrong') continue;
    const { timeSec } = heard.notes[note.played]!;
    times.set(note.step, Math.min(times.get(note.step) ?? Infinity, timeSec));
  }
  return [...times].flatMap(([step, timeSec]): Gap[] => {
    const before = times.get(step - 1);
    const place = exercise.steps[step]?.copy?.place ?? 0;
    return before === undefined || place === 0 || timeSec <= before ? [] : [{ place, sec: timeSec - before }];
  });
}

function ratioOf(gaps: readonly Gap[], firstIsLong: boolean): number {
  const of = (odd: boolean): number | undefined =>
    middle(gaps.filter(({ place }) => (place % 2 === 1) === odd).map(({ sec }) => sec));
  const [long, short] = [of(firstIsLong), of(!firstIsLong)];
  if (long === undefined || short === undefined) return LONG_TO_SHORT;
  return Math.min(Math.max(long / short, 1 / MOST_RATIO), MOST_RATIO);
}

/** The first of each group, unless it was rather the last that was held: a group is run and waited after. */
function heldPlaceOf(gaps: readonly Gap[], size: number): number {
  const heldAt = (place: number): number =>
    median(gaps.filter((gap) => (gap.place - 1) % size === place).map(({ sec }) => sec)) ?? 0;
  return heldAt(size - 1) > heldAt(0) ? size - 1 : 0;
}
