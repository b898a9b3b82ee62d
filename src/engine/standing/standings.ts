import type { Criteria } from '../report/index.ts';
import { criteriaAsked } from './assigned.ts';
import { byExercise, exerciseId } from './group.ts';
import { standingOf } from './standing.ts';
import type { Assignment, Practised, Standing } from './types.ts';

/** A history → where each exercise in it stands, by `exerciseId`. */
export function standings(history: readonly Practised[], criteria: Criteria): ReadonlyMap<string, Standing> {
  return standingsOf(byExercise(history), criteria);
}

/**
 * The same for attempts that are sorted already. What a teacher asks of an assigned exercise is what it is judged by, also after
 * it is met; only the tempo is then again the one aimed at last, which may be faster.
 */
export function standingsOf(
  groups: ReadonlyMap<string, readonly Practised[]>,
  criteria: Criteria,
  assignments: readonly Assignment[] = [],
): ReadonlyMap<string, Standing> {
  const assigned = new Map(assignments.map((one) => [exerciseId(one.asked.exercise), one]));
  return new Map(
    [...groups].map(([id, attempts]) => {
      const { exercise } = attempts.at(-1)!.summary;
      const assignment = assigned.get(id);
      if (assignment === undefined) return [id, standingOf(exercise, attempts, criteria)];
      const { asked, metMs } = assignment;
      const askedBpm = metMs === null ? asked.targetBpm : undefined;
      return [id, standingOf(exercise, attempts, criteriaAsked(asked, criteria), askedBpm)];
    }),
  );
}
