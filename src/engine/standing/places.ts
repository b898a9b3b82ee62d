import { ALL_HANDS, ALL_KEYS, listedKey, takesMinorScale, usualOctaves } from '../exercise/index.ts';
import type { ExerciseChoice, Form, Hands } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { leastTempi, USUAL_GOALS, type Goals } from './goals.ts';
import { standingOf } from './standing.ts';
import { SET } from './syllabus.ts';
import type { FormStandings, Standing } from './types.ts';

/** Standings → all keys × forms of the set × hands. Where a form was played in several octaves or minor scales, the one played last counts. */
export function places(
  standings: Iterable<Standing>,
  criteria: Criteria,
  goals: Goals = USUAL_GOALS,
): readonly FormStandings[] {
  const latest = new Map<string, Standing>();
  for (const standing of standings) {
    const id = placeId(listedKey(standing.exercise.key), standing.exercise.form, standing.exercise.hands);
    const known = latest.get(id);
    if (known === undefined || isLater(standing, known)) latest.set(id, standing);
  }
  return ALL_KEYS.flatMap((key) =>
    SET.map((form) => {
      const of = (hands: Hands): Standing => {
        const known = latest.get(placeId(key, form, hands));
        if (known !== undefined) return known;
        const exercise = variantOf(latest, key, form, hands);
        return standingOf(exercise, [], criteria, leastTempi(goals, exercise));
      };
      const [left, right, together] = ALL_HANDS.map(of);
      return { key, form, byHands: { left: left!, right: right!, together: together! } };
    }),
  );
}

function placeId(key: string, form: Form, hands: Hands): string {
  return `${key}|${form}|${hands}`;
}

function isLater(one: Standing, other: Standing): boolean {
  const [a, b] = [one.lastMs ?? 0, other.lastMs ?? 0];
  return a !== b ? a > b : one.exercise.octaves > other.exercise.octaves;
}

/** What one of the hands has not played yet, in the octaves and the minor scale in which another hand has. */
function variantOf(
  latest: ReadonlyMap<string, Standing>,
  key: string,
  form: Form,
  hands: Hands,
): ExerciseChoice {
  const played = ALL_HANDS.map((other) => latest.get(placeId(key, form, other))).find(
    (one) => one !== undefined,
  );
  if (played !== undefined) return { ...played.exercise, hands };
  const scale = takesMinorScale(key, form) ? ({ minorScale: 'harmonic' } as const) : {};
  return { key, form, hands, octaves: usualOctaves(form), ...scale };
}
