import { buildExercise } from '../../exercise/index.ts';
import type { ExerciseChoice, Intention, Locale } from '../../exercise/index.ts';
import { stretchOf } from './place.ts';
import { tellPractising } from './telling/index.ts';

/** How an exercise is to be practised, in a language: "only A♭–C–E♭–A♭, long–short, twice in a row". @throws UsageError where there is none. */
export function tellIntention(choice: ExerciseChoice, intention: Intention, locale: Locale): string {
  const exercise = buildExercise(choice);
  const last = exercise.steps.length - 1;
  const { fromStep, toStep } = intention.stretch ?? { fromStep: 0, toStep: last };
  // One that was meant for more octaves is none of this exercise.
  const named =
    intention.stretch === undefined || toStep > last ? null : stretchOf({ exercise }, fromStep, toStep);
  return tellPractising(intention, named, locale);
}
