import {
  assignmentsOf,
  byExercise,
  byPractice,
  planOf,
  standingsOf,
  USUAL_GOALS,
} from '../../../src/engine/index.ts';
import type {
  AssignedExercise,
  AttemptSummary,
  Criteria,
  ExerciseChoice,
  Goals,
  PlanItem,
  Practised,
  Standing,
} from '../../../src/engine/index.ts';

/** An attempt at the criterion, save for what is said otherwise. */
export function summary(exercise: ExerciseChoice, more: Partial<AttemptSummary> = {}): AttemptSummary {
  return {
    exercise,
    targetBpm: 80,
    expected: 13,
    wrong: 0,
    missed: 0,
    extra: 0,
    unsure: 0,
    evennessPercent: 4,
    tempoBpm: 81,
    lateCrossings: 0,
    worstCrossingMs: 12,
    chordSpreadMs: null,
    handsApartMs: null,
    situation: 'at-the-criterion',
    ...more,
  };
}

export const DAY_MS = 86_400_000;
/** A moment in an invented week. */
export const NOW_MS = Date.UTC(2026, 10, 25, 17);

/** Attempts at one exercise, a day apart, the last one `daysAgo`. */
export function attempts(
  exercise: ExerciseChoice,
  made: readonly Partial<AttemptSummary>[],
  daysAgo = 0,
): readonly Practised[] {
  return made.map((more, index) => ({
    whenMs: NOW_MS - (daysAgo + made.length - 1 - index) * DAY_MS,
    summary: summary(exercise, more),
  }));
}

/** Three in a row at the criterion. */
export const READY = [{}, {}, {}];

/** A history → where each exercise in it stands, by `exerciseId`, as the journal's page works it out. */
export const standings = (
  history: readonly Practised[],
  criteria: Criteria,
  goals: Goals = USUAL_GOALS,
): ReadonlyMap<string, Standing> => standingsOf(byExercise(history), criteria, [], goals);

/** A history and a number of minutes → the plan of the day. */
export function today(
  minutes: number,
  history: readonly Practised[],
  nowMs: number,
  criteria: Criteria,
  assigned: readonly AssignedExercise[] = [],
  goals: Goals = USUAL_GOALS,
): readonly PlanItem[] {
  const groups = byExercise(history);
  const assignments = assignmentsOf(assigned, groups, criteria, byPractice(history));
  const stand = standingsOf(groups, criteria, assignments, goals);
  return planOf(minutes, stand, nowMs, criteria, assignments, goals);
}
