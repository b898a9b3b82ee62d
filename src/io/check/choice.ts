import { buildExercise } from '../../engine/index.ts';
import type { ExerciseChoice } from '../../engine/index.ts';

/** What was kept, whatever it is → an exercise of the set; null where it is none. */
export function readChoice(kept: unknown): ExerciseChoice | null {
  if (typeof kept !== 'object' || kept === null || !('key' in kept) || typeof kept.key !== 'string')
    return null;
  try {
    return buildExercise(kept as ExerciseChoice).choice;
  } catch {
    return null;
  }
}
