import type { Criteria } from '../report/index.ts';
import { isWhole } from '../exercise/index.ts';
import { workId } from './group.ts';
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
 * What was assigned, and the attempts at each exercise, oldest first (`byExercise`), and those that practised something of one
 * (`byPractice`) → how far each is, in the order given. Where the same was assigned twice, the first counts. Only attempts from then
 * on count: what was ready before is to be played again.
 *
 * Once met, it stays met; the teacher hears how it goes on.
 */
export function assignmentsOf(
  assigned: readonly AssignedExercise[],
  attempts: ReadonlyMap<string, readonly Practised[]>,
  criteria: Criteria,
  practice: ReadonlyMap<string, readonly Practised[]> = new Map(),
): readonly Assignment[] {
  const seen = new Set<string>();
  return assigned.flatMap((asked) => {
    const id = workId(asked.exercise, asked.intention);
    if (seen.has(id)) return [];
    seen.add(id);
    const since = (attempts.get(id) ?? practice.get(id) ?? []).filter(
      ({ whenMs }) => whenMs >= asked.sinceMs,
    );
    return [isPractised(asked) ? practisedSo(asked, since, criteria) : playedSo(asked, since, criteria)];
  });
}

/** Whether something of the exercise is asked for, and not the exercise as it is written. */
export function isPractised({ intention }: Pick<AssignedExercise, 'intention'>): boolean {
  return intention !== undefined && !isWhole(intention);
}

function playedSo(asked: AssignedExercise, since: readonly Practised[], criteria: Criteria): Assignment {
  const by = criteriaAsked(asked, criteria);
  const { exercise, targetBpm } = asked;
  const standing = standingOf(exercise, since, by, targetBpm === null ? [] : [targetBpm]);
  const metMs = firstMet(
    since,
    (row) => isReady(row, by),
    ({ summary }) => shortfalls(summary, by, targetBpm).length === 0,
  );
  return { asked, standing: { ...standing, targetBpm }, metMs };
}

/** It is done when its report says so, as often in a row as is asked (once): the intention itself says how often it is played. */
function practisedSo(asked: AssignedExercise, since: readonly Practised[], criteria: Criteria): Assignment {
  const wanted = asked.inARow ?? 1;
  const isDone = ({ summary }: Practised): boolean => summary.practised?.done === true;
  const inARow = since.length - 1 - since.findLastIndex((attempt) => !isDone(attempt));
  const level = inARow >= wanted ? 'ready' : since.length === 0 ? 'new' : inARow > 0 ? 'nearly' : 'not-yet';
  const standing = {
    ...standingOf(asked.exercise, [], criteria),
    level,
    attempts: since.length,
    inARow,
    wanted,
    lastMs: since.at(-1)?.whenMs ?? null,
    targetBpm: asked.targetBpm,
  } as const;
  return { asked, standing, metMs: firstMet(since, ({ length }) => length >= wanted, isDone) };
}

/** When an attempt first made up the row that is asked for, ms; null: none did. */
function firstMet(
  since: readonly Practised[],
  isEnough: (row: readonly Practised[]) => boolean,
  isGood: (attempt: Practised) => boolean,
): number | null {
  let row: Practised[] = [];
  for (const attempt of since) {
    row = isGood(attempt) ? [...row, attempt] : [];
    if (isEnough(row)) return attempt.whenMs;
  }
  return null;
}
