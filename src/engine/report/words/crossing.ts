import { median } from '../../base/statistics.ts';
import type { CrossingDelay, Measures } from '../types.ts';
import { isMeasured } from '../measures/index.ts';
import type { Figure } from '../measures/index.ts';
import type { Scene, Situation } from './scene.ts';
import { handWords, practiceAround, say, sayFinger, sayStretch, surelyOver, valueOf } from './scene.ts';

/** 5. Crossings late: one, every one of a direction, both directions. */

const TWO_THIRDS = 2 / 3;

/** Both hands together, and late both ways or much worse than each hand alone. */
const apartForNow: Situation = {
  name: 'hands-apart-for-now',
  takesSecond: false,
  tell: (scene) => {
    if (scene.exercise.choice.hands !== 'together') return null;
    const bothLate = bothWays.tell(scene) !== null;
    const worse = muchWorse(scene);
    if (!bothLate && worse === null) return null;
    const practice = practiceAround(scene, 0, scene.exercise.steps.length - 1, TWO_THIRDS);
    const why = worse ?? 'the crossings come late both ways';
    return {
      sentence: `Hands apart for now: ${why}`,
      emphasis: 'Hands apart for now',
      nextStep: `each hand alone until it is even; then together at ${practice.tempoBpm}.`,
      steps: scene.measured.measures.crossings.filter((one) => one.late).map((one) => one.step),
      practice,
    };
  },
};

/**
 * Much worse than each hand alone: unevenness, or the delay of the crossings, over half as much again as that of the worse
 * single hand at about this tempo, said with both figures; null: not so, or not known.
 */
function muchWorse(scene: Scene): string | null {
  const { evennessPercent, crossingDelayMs } = scene.measured.measures;
  const { criteria } = scene;
  const time = worseThanAlone(scene, evennessPercent, (own) => own.evennessPercent, criteria.evennessPercent);
  if (time !== null)
    return `together the time varies by ${time.now} %, each hand alone by ${time.alone} % at most`;
  const leastMs = criteria.crossingShareOfInterval * usualIntervalMs(scene);
  const crossings = worseThanAlone(scene, crossingDelayMs, (own) => own.crossingDelayMs, leastMs);
  if (crossings === null) return null;
  return `together the crossings come ${crossings.now} ms late, in each hand alone ${crossings.alone} ms at most`;
}

/** A figure now and the worse of both hands alone, rounded; null where it is not over so many times that one and over `least`. */
function worseThanAlone(
  { alone, criteria, measured }: Scene,
  now: Figure,
  of: (measures: Measures) => Figure,
  least: number,
): { readonly now: number; readonly alone: number } | null {
  const tempo = valueOf(measured.measures.tempoBpm);
  const [left, right] = (['left', 'right'] as const).map((hand) => {
    const own = alone[hand].at(-1)?.measures;
    const theirs = own && valueOf(own.tempoBpm);
    const near =
      tempo !== undefined && theirs !== undefined && Math.abs(theirs / tempo - 1) <= criteria.sameTempoShare;
    return near && own ? valueOf(of(own)) : undefined;
  });
  if (left === undefined || right === undefined || !isMeasured(now)) return null;
  const worst = Math.max(0, left, right);
  if (!surelyOver(now, Math.max(criteria.togetherWorseTimes * worst, least), criteria)) return null;
  return { now: Math.round(now.value), alone: Math.round(worst) };
}

function usualIntervalMs({ measured }: Scene): number {
  return median(measured.intervals.map(({ ioiMs }) => ioiMs)) ?? Infinity;
}

const bothWays: Situation = {
  name: 'crossing-late-both-ways',
  takesSecond: true,
  tell: (scene) => {
    const up = group(scene, 'up');
    const down = group(scene, 'down');
    if (!up.every || !down.every || up.all.length + down.all.length < 2) return null;
    const late = [...up.late, ...down.late];
    const last = scene.exercise.steps.length - 1;
    const practice = practiceAround(scene, 0, last, TWO_THIRDS);
    return {
      sentence: `The crossings come late both going up and coming down, by ${meanMs(late)} ms`,
      half: 'the crossings come late both ways',
      emphasis: 'both going up and coming down',
      nextStep: `${handWords(scene.exercise)}, one direction at a time, at ${practice.tempoBpm}; then up and down.`,
      steps: late.map((crossing) => crossing.step),
      practice,
    };
  },
};

const oneWay: Situation = {
  name: 'crossing-late-one-direction',
  takesSecond: true,
  tell: (scene) => {
    const chosen = (['up', 'down'] as const)
      .map((direction) => group(scene, direction))
      .find((one) => one.every && one.all.length >= 2);
    if (chosen === undefined) return null;
    const { late } = chosen;
    const names = [...new Set(late.map((crossing) => noteAt(scene, crossing)))];
    const to = names.length === 1 ? ` to ${names[0]!}` : '';
    const times = late.length === 2 ? 'both times' : 'each time';
    const what = `${directionWords(late[0]!)}${to}, ${times}`;
    const first = Math.min(...late.map((crossing) => crossing.step));
    const end = Math.max(...late.map((crossing) => crossing.step));
    const practice = practiceAround(scene, first - 1, end, TWO_THIRDS);
    return {
      sentence: `${who(scene, late[0]!)} ${what}`,
      half: `${lower(who(scene, late[0]!))} ${directionWords(late[0]!)}`,
      emphasis: what,
      nextStep: `${handWords(scene.exercise)}, only ${sayStretch(scene, practice.fromStep, practice.toStep)}, at ${practice.tempoBpm}. ${movement(scene, late[0]!)}`,
      steps: late.map((crossing) => crossing.step),
      practice,
    };
  },
};

const one: Situation = {
  name: 'crossing-late-one',
  takesSecond: true,
  tell: (scene) => {
    const late = scene.measured.measures.crossings.filter((crossing) => crossing.late);
    if (late.length === 0) return null;
    const worst = late.reduce((a, b) => (b.delayMs > a.delayMs ? b : a));
    const what = `${directionWords(worst)} to ${noteAt(scene, worst)}`;
    const by = `by ${Math.round(worst.delayMs)} ms`;
    const practice = practiceAround(scene, worst.step - 2, worst.step + 1, TWO_THIRDS);
    return {
      sentence: `${who(scene, worst)} ${what}, ${by}`,
      half: `${lower(who(scene, worst))} ${what}`,
      emphasis: what,
      nextStep: `${handWords(scene.exercise)}, only ${sayStretch(scene, practice.fromStep, practice.toStep)}, at ${practice.tempoBpm}. ${movement(scene, worst)}`,
      steps: late.map((crossing) => crossing.step),
      practice,
    };
  },
};

function group(
  scene: Scene,
  direction: 'up' | 'down',
): { all: readonly CrossingDelay[]; late: readonly CrossingDelay[]; every: boolean } {
  const all = scene.measured.measures.crossings.filter((crossing) => crossing.direction === direction);
  const late = all.filter((crossing) => crossing.late);
  return { all, late, every: all.length > 0 && late.length === all.length };
}

function noteAt(scene: Scene, { step, hand }: CrossingDelay): string {
  return say(scene.exercise.steps[step]!.notes.find((note) => note.hand === hand)!);
}

/** "The thumb comes late", "Finger 4 crosses over late" */
function who(scene: Scene, crossing: CrossingDelay): string {
  if (crossing.kind === 'thumb-under') return 'The thumb comes late';
  const note = scene.exercise.steps[crossing.step]!.notes.find((one) => one.hand === crossing.hand)!;
  return `F${sayFinger(note.finger).slice(1)} crosses over late`;
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function directionWords({ direction }: CrossingDelay): string {
  return direction === 'up' ? 'going up' : 'coming down';
}

function movement(scene: Scene, { step, hand, kind }: CrossingDelay): string {
  const before = scene.exercise.steps[step - 1]!.notes.find((note) => note.hand === hand)!;
  const here = scene.exercise.steps[step]!.notes.find((note) => note.hand === hand)!;
  return kind === 'thumb-under'
    ? `Bring the thumb under while ${before.finger} still holds ${say(before)}.`
    : `Bring ${here.finger} over while the thumb still holds ${say(before)}.`;
}

function meanMs(crossings: readonly CrossingDelay[]): number {
  return Math.round(crossings.reduce((sum, { delayMs }) => sum + delayMs, 0) / crossings.length);
}

export const CROSSING: readonly Situation[] = [apartForNow, bothWays, oneWay, one];
