export type * from './types.ts';
import type { Exercise, ExerciseChoice } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import type { Alignment } from './types.ts';

/** Played notes against the expected steps, whatever octave they were played in. */
export function matchNotes(heard: Heard, exercise: Exercise): Alignment {
  throw new Error(exercise.title + heard.durationSec);
}

/** The exercise of the set that explains the notes best; null where none does well enough to say. */
export function recogniseExercise(heard: Heard): ExerciseChoice | null {
  throw new Error(String(heard.durationSec));
}
