export type * from './types.ts';
import { UsageError } from '../base/errors.ts';
import type { Exercise, ExerciseChoice, KeyFacts } from './types.ts';

/** The 24 keys, major then minor, round the circle of fifths from C and from A. */
export const ALL_KEYS: readonly string[] = [];

/** "f♯ Minor", "F# minor", "f#m" → "F# minor"; throws UsageError that says what is accepted. */
export function normaliseKey(text: string): string {
  throw new UsageError(text);
}

/** Choice → the exercise written out; throws UsageError on a choice that does not exist. */
export function buildExercise(choice: ExerciseChoice): Exercise {
  throw new UsageError(choice.key);
}

/** Key → signature, scale, triad, primary chords. */
export function keyFacts(key: string): KeyFacts {
  throw new UsageError(key);
}
