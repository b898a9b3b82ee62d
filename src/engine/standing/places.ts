import {
  ALL_FORMS,
  ALL_HANDS,
  ALL_KEYS,
  listedKey,
  takesMinorScale,
  usualOctaves,
} from '../exercise/index.ts';
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
  const latest = latestOf(standings);
  return ALL_KEYS.flatMap((key) => SET.map((form) => placeOf(latest, key, form, criteria, goals)));
}

/** Standings → what was begun beside the set, by forms and keys in their order. A passage of one's own has no place: its title is its name. */
export function furtherPlaces(
  standings: Iterable<Standing>,
  criteria: Criteria,
  goals: Goals = USUAL_GOALS,
): readonly FormStandings[] {
  const latest = latestOf(standings);
  const begun = new Set(
    [...latest.values()].map(({ exercise: { key, form } }) => `${listedKey(key)}|${form}`),
  );
  return ALL_FORMS.filter((form) => !SET.some((one) => one === form)).flatMap((form) =>
    ALL_KEYS.filter((key) => begun.has(`${key}|${form}`)).map((key) =>
      placeOf(latest, key, form, criteria, goals),
    ),
  );
}

function latestOf(standings: Iterable<Standing>): ReadonlyMap<string, Standing> {
  const latest = new Map<string, Standing>();
  for (const standing of standings) {
    const id = placeId(listedKey(standing.exercise.key), standing.exercise.form, standing.exercise.hands);
    const known = latest.get(id);
    if (known === undefined || isLater(standing, known)) latest.set(id, standing);
  }
  return latest;
}

function placeOf(
  latest: ReadonlyMap<string, Standing>,
  key: string,
  form: Form,
  criteria: Criteria,
  goals: Goals,
): FormStandings {
  const of = (hands: Hands): Standing => {
    const known = latest.get(placeId(key, form, hands));
    if (known !== undefined) return known;
    const exercise = variantOf(latest, key, form, hands);
    return standingOf(exercise, [], criteria, leastTempi(goals, exercise));
  };
  return { key, form, byHands: { left: of('left'), right: of('right'), together: of('together') } };
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
