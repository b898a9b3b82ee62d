import type { Criteria } from '../report/index.ts';
import { exerciseId } from './group.ts';
import { shortfalls } from './shortfalls.ts';
import { isReady, standingOf } from './standing.ts';
import type { AssignedExercise, Assignment, Practised } from './types.ts';

/** Criteria → the same with what a teacher asks of one exercise in place of the usual; the evenness asked for holds at any tempo. */
export function criteriaAsked(
  { inARow, evennessPercent }: Pick<AssignedExercise, 'inARow' | 'evennessPercent'>,
  criteria: Criteria,
): Criteria {
  return {
    ...criteria,
    readyInARow: Math.max(1, inARow ?? criteria.readyInARow),
    // Whoever says how often has said all of it: days are not asked for beside.
    readyDays: inARow === null ? criteria.readyDays : 1,
    ...(evennessPercent !== null && {
      evennessPercent,
      unevenPercent: Math.max(criteria.unevenPercent, evennessPercent),
      evennessStepMs: null,
    }),
  };
}

/**
 * What was assigned, and the attempts at each exercise, oldest first → how far each is, in the order given. Where an exercise
 * was assigned twice, the first counts. Only attempts from then on count: what was ready before is to be played again.
 *
 * Once met, it stays met; the teacher hears how it goes on.
 */
export function assignmentsOf(
  assigned: readonly AssignedExercise[],
  attempts: ReadonlyMap<string, readonly Practised[]>,
  criteria: Criteria,
): readonly Assignment[] {
  const seen = new Set<string>();
  return assigned.flatMap((asked) => {
    const id = exerciseId(asked.exercise);
    if (seen.has(id)) return [];
    seen.add(id);
    const since = (attempts.get(id) ?? []).filter(({ whenMs }) => whenMs >= asked.sinceMs);
    const by = criteriaAsked(asked, criteria);
    return [
      {
        asked,
        standing: {
          ...standingOf(asked.exercise, since, by, asked.targetBpm === null ? [] : [asked.targetBpm]),
          targetBpm: asked.targetBpm,
        },
        metMs: firstMet(asked, since, by),
      },
    ];
  });
}

/** When an attempt first made up the row that is asked for, ms; null: none did. */
function firstMet(
  { targetBpm }: AssignedExercise,
  since: readonly Practised[],
  criteria: Criteria,
): number | null {
  let row: Practised[] = [];
  for (const attempt of since) {
    row = shortfalls(attempt.summary, criteria, targetBpm).length === 0 ? [...row, attempt] : [];
    if (isReady(row, criteria)) return attempt.whenMs;
  }
  return null;
}
