import { takesMinorScale } from '../exercise/index.ts';
import type { ExerciseChoice } from '../exercise/index.ts';
import { isPractice } from './summary.ts';
import type { Practised } from './types.ts';

/** A choice → a text that is the same for the same exercise and hands, and orders exercises the same way every time. */
export function exerciseId({ key, form, octaves, minorScale, hands }: ExerciseChoice): string {
  const scale = takesMinorScale(key, form) ? (minorScale ?? 'harmonic') : '';
  return [key, form, octaves, scale, hands].join('|');
}

/** A history in any order → the attempts at each whole exercise, oldest first, by `exerciseId`. */
export function byExercise(history: readonly Practised[]): ReadonlyMap<string, readonly Practised[]> {
  const groups = new Map<string, Practised[]>();
  // Five years share some hundred exercises, each one object a drawer: its id is made once, not once an attempt.
  const ids = new Map<ExerciseChoice, string>();
  for (const attempt of history) {
    const { exercise } = attempt.summary;
    if (isPractice(attempt.summary)) continue;
    const id = ids.get(exercise) ?? exerciseId(exercise);
    ids.set(exercise, id);
    const group = groups.get(id);
    if (group === undefined) groups.set(id, [attempt]);
    else group.push(attempt);
  }
  for (const group of groups.values()) group.sort((a, b) => a.whenMs - b.whenMs);
  return groups;
}
