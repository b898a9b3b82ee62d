import type { ExerciseChoice } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { exerciseId } from './group.ts';
import { USUAL_SYLLABUS } from './levels.ts';
import { asksFor, type Syllabus } from './syllabus.ts';

/** What is aimed at: the levels, and tempi that somebody set for one exercise. */
export interface Goals {
  readonly syllabus: Syllabus;
  /** by `exerciseId`: the least tempo at which it counts as ready, beats a minute */
  readonly ownBpm: Readonly<Record<string, number>>;
}

export const USUAL_GOALS: Goals = { syllabus: USUAL_SYLLABUS, ownBpm: {} };

/**
 * The tempi at which an exercise counts as ready, one level after the other, beats a minute, each faster than the one before:
 * what somebody set for it; else what the levels ask of it; else what the first level with that form asks. Empty: any tempo.
 */
export function leastTempi({ syllabus, ownBpm }: Goals, exercise: ExerciseChoice): readonly number[] {
  const own = ownBpm[exerciseId(exercise)];
  if (own !== undefined) return [own];
  const asked = asksFor(syllabus, exercise).map(({ ask }) => ask.leastBpm);
  if (asked.length > 0) return rising(asked);
  const { form } = exercise;
  const first = syllabus.levels.flatMap(({ asks }) => asks).find((ask) => ask.form === form);
  return rising([first?.leastBpm ?? null]);
}

/** Criteria → the same with the touch and the evenness of loudness that the levels ask of an exercise, the lowest level that asks for it. */
export function criteriaAt({ syllabus }: Goals, exercise: ExerciseChoice, criteria: Criteria): Criteria {
  const ask = asksFor(syllabus, exercise)[0]?.ask;
  return { ...criteria, touch: ask?.touch ?? null, loudnessDb: ask?.loudnessDb ?? null };
}

function rising(tempi: readonly (number | null)[]): readonly number[] {
  return tempi
    .flatMap((bpm) => bpm ?? [])
    .reduce<readonly number[]>((all, bpm) => (bpm > (all.at(-1) ?? 0) ? [...all, bpm] : all), []);
}
