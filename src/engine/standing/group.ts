import { isWhole, passageId, takesMinorScale } from '../exercise/index.ts';
import type { ExerciseChoice, Intention } from '../exercise/index.ts';
import { isPractice } from './summary.ts';
import type { AttemptSummary, Practised } from './types.ts';

/**
 * A choice → a text that is the same for the same exercise and hands, and orders exercises the same way every time. Fingers and register
 * make no other exercise of it; of other notes to a beat the tempi would not compare.
 */
export function exerciseId(choice: ExerciseChoice): string {
  const { key, form, octaves, minorScale, hands, passage, notesABeat } = choice;
  if (passage !== undefined) return [form, passageId(passage), hands].join('|');
  const scale = takesMinorScale(key, form) ? (minorScale ?? 'harmonic') : '';
  const rhythm = notesABeat === undefined ? [] : [`${notesABeat} a beat`];
  return [key, form, octaves, scale, hands, ...rhythm].join('|');
}

/** An exercise and how it is to be practised → a text that is the same for the same; of the whole as written that of `exerciseId`. */
export function workId(exercise: ExerciseChoice, intention?: Intention): string {
  if (intention === undefined || isWhole(intention)) return exerciseId(exercise);
  const { stretch, ...how } = intention;
  const parts = Object.entries({ ...how, ...stretch }).toSorted(([a], [b]) => (a < b ? -1 : 1));
  return `${exerciseId(exercise)}|${JSON.stringify(parts)}`;
}

/** A history in any order → the attempts that practised something of an exercise, oldest first, by `workId`. */
export const byPractice = (history: readonly Practised[]): ReadonlyMap<string, readonly Practised[]> =>
  grouped(history, ({ exercise, practised }) =>
    practised === undefined ? null : workId(exercise, practised.intention),
  );

/** A history in any order → the attempts at each whole exercise, oldest first, by `exerciseId`. */
export function byExercise(history: readonly Practised[]): ReadonlyMap<string, readonly Practised[]> {
  // Five years share some hundred exercises, each one object a drawer: its id is made once, not once an attempt.
  const ids = new Map<ExerciseChoice, string>();
  return grouped(history, (summary) => {
    if (isPractice(summary)) return null;
    const { exercise } = summary;
    const id = ids.get(exercise) ?? exerciseId(exercise);
    ids.set(exercise, id);
    return id;
  });
}

/** `idOf` null: it is left out. */
function grouped(
  history: readonly Practised[],
  idOf: (summary: AttemptSummary) => string | null,
): ReadonlyMap<string, readonly Practised[]> {
  const groups = new Map<string, Practised[]>();
  for (const attempt of history) {
    const id = idOf(attempt.summary);
    if (id === null) continue;
    const group = groups.get(id);
    if (group === undefined) groups.set(id, [attempt]);
    else group.push(attempt);
  }
  for (const group of groups.values()) group.sort((a, b) => a.whenMs - b.whenMs);
  return groups;
}
