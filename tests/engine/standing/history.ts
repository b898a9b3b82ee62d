import type { AttemptSummary, ExerciseChoice, Practised } from '../../../src/engine/index.ts';

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
