import { median } from '../../base/statistics.ts';
import { groupOf } from '../../exercise/index.ts';
import type { Rhythm } from '../../exercise/index.ts';
import type { Interval } from '../measures/index.ts';
import type { Found, Scene, Situation } from './scene.ts';
import { isChordForm } from './scene.ts';
import { inARhythm } from './shaping.ts';

/** Groups in which exercises are practised; pairs are a rhythm of their own. */
const GROUPS = ['groups-of-3', 'groups-of-4', 'groups-of-6'] as const satisfies readonly Rhythm[];

/**
 * So many holds, each so many times as long as the others' middle, and hardly any other as long as the shortest of them: no
 * unevenness looks like that. Common practice, no source.
 */
const LEAST_HOLDS = 3;
const HELD_TIMES = 1.7;
const OTHERS_UNDER = 0.95;
/** Holds that are mostly crossings are late thumbs, which come as regularly. */
const MOST_CROSSINGS = 0.5;

/** The groups in which the whole was played, one note of each held; null: in none. */
function groupsPlayed(scene: Scene): (typeof GROUPS)[number] | null {
  if (isChordForm(scene.exercise)) return null;
  const { intervals } = scene.measured;
  const found = GROUPS.find((rhythm) => {
    const size = groupOf(rhythm)!;
    return Array.from({ length: size }, (_, place) => place).some((place) => isHeld(intervals, size, place));
  });
  return found ?? null;
}

function isHeld(intervals: readonly Interval[], size: number, place: number): boolean {
  const held = intervals.filter(({ fromStep }) => fromStep % size === place);
  const others = intervals
    .filter(({ fromStep }) => fromStep % size !== place)
    .map(({ perBeatMs }) => perBeatMs);
  const usual = median(others);
  if (usual === undefined || held.length < LEAST_HOLDS) return false;
  const shortest = Math.min(...held.map(({ perBeatMs }) => perBeatMs));
  const crossings = held.filter(({ intoCrossing }) => intoCrossing).length;
  return (
    shortest > HELD_TIMES * usual &&
    crossings <= MOST_CROSSINGS * held.length &&
    others.filter((value) => value < shortest).length >= OTHERS_UNDER * others.length
  );
}

/** One note of each group held, as exercises are practised in: asked about, and nothing that follows from it is blamed. */
export const inGroups: Situation = (scene) => {
  const rhythm = groupsPlayed(scene);
  return rhythm === null ? null : inARhythm(rhythm);
};

/** What is said of the time of an attempt in groups would blame what was meant. */
const OF_TIME: readonly Found['statement']['situation'][] = [
  'stopped',
  'crossing-late',
  'crossing-late-one-direction',
  'crossing-late-both-ways',
  'hands-apart-for-now',
  'late-note',
  'late-at-the-turn',
  'tired',
  'uneven',
  'uneven-in-pairs',
  'drift',
];

export const withoutGroups = (scene: Scene, found: readonly Found[]): readonly Found[] =>
  groupsPlayed(scene) === null
    ? found
    : found.filter(({ statement }) => !OF_TIME.includes(statement.situation));
