import * as v from 'valibot';
import { buildExercise, CHOICE, INTENTION } from '../../engine/index.ts';
import type { ExerciseChoice, Words } from '../../engine/index.ts';

/** What was kept, whatever it is → an exercise; null where it is none. */
export function readChoice(kept: unknown): ExerciseChoice | null {
  if (!v.is(CHOICE, kept)) return null;
  try {
    return buildExercise(kept).choice;
  } catch {
    return null;
  }
}

/** The same of a passage that is still being written: perhaps nobody can play it yet. */
export function readUnfinished(kept: unknown): ExerciseChoice | null {
  return v.is(CHOICE, kept) && kept.passage !== undefined ? kept : null;
}

const STEP = v.pipe(v.number(), v.integer(), v.minValue(0));
const PRACTICE = v.object({
  fromStep: STEP,
  toStep: STEP,
  tempoBpm: v.pipe(v.number(), v.minValue(10), v.maxValue(400)),
  intention: v.exactOptional(INTENTION),
});

/** What was kept, whatever it is → what was set up to be practised of an exercise; null where it is none of it. */
export function readPractice(kept: unknown, choice: ExerciseChoice): NonNullable<Words['practice']> | null {
  const found = v.safeParse(PRACTICE, kept);
  if (!found.success) return null;
  const { fromStep, toStep } = found.output;
  return fromStep <= toStep && toStep < buildExercise(choice).steps.length ? found.output : null;
}
