import { median } from '../../base/statistics.ts';
import type { CrossingDelay, Figure, Measures } from '../types.ts';
import { isMeasured } from '../measures/index.ts';
import type { Scene, Situation } from './scene.ts';
import { practiceAround, say, surelyOver, taskOf, valueOf } from './scene.ts';
import type { ApartReason, FingeredName } from './types.ts';

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
    return {
      ...scene.wording.apartForNow(worse ?? { kind: 'crossings' }, practice.tempoBpm),
      steps: scene.measured.measures.crossings.filter((one) => one.late).map((one) => one.step),
      practice,
    };
  },
};

/**
 * Much worse than each hand alone: unevenness, or the delay of the crossings, over half as much again as that of the worse
 * single hand at about this tempo, with both figures; null: not so, or not known.
 */
function muchWorse(scene: Scene): ApartReason | null {
  const { evennessPercent, crossingDelayMs } = scene.measured.measures;
  const { criteria } = scene;
  const time = worseThanAlone(scene, evennessPercent, (own) => own.evennessPercent, criteria.evennessPercent);
  if (time !== null) return { kind: 'uneven', ...time };
  const leastMs = criteria.crossingShareOfInterval * usualIntervalMs(scene);
  const delay = worseThanAlone(scene, crossingDelayMs, (own) => own.crossingDelayMs, leastMs);
  return delay === null ? null : { kind: 'delay', ...delay };
}

/** A figure now and the worse of both hands alone, rounded; null where it is not over so many times that one and over `least`. */
function worseThanAlone(
  { alone, criteria, measured }: Scene,
  now: Figure,
  of: (measures: Measures) => Figure,
  least: number,
): { readonly together: number; readonly alone: number } | null {
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
  return { together: Math.round(now.value), alone: Math.round(worst) };
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
    const { hands } = scene.exercise.choice;
    return {
      ...scene.wording.crossingsBothWays(meanMs(late), hands, practice.tempoBpm),
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
    const names = [...new Set(late.map((crossing) => crossingFacts(scene, crossing).here.name))];
    const first = Math.min(...late.map((crossing) => crossing.step));
    const end = Math.max(...late.map((crossing) => crossing.step));
    const practice = practiceAround(scene, first - 1, end, TWO_THIRDS);
    return {
      ...scene.wording.crossingsOneWay(
        crossingFacts(scene, late[0]!),
        names.length === 1 ? names[0]! : null,
        late.length,
        taskOf(scene, practice),
      ),
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
    const practice = practiceAround(scene, worst.step - 2, worst.step + 1, TWO_THIRDS);
    return {
      ...scene.wording.crossingOne(
        crossingFacts(scene, worst),
        Math.round(worst.delayMs),
        taskOf(scene, practice),
      ),
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

/** A crossing with the note before it and the one it leads to. */
function crossingFacts(scene: Scene, { step, hand, kind, direction }: CrossingDelay) {
  const at = (place: number): FingeredName => {
    const note = scene.exercise.steps[place]!.notes.find((one) => one.hand === hand)!;
    return { name: say(scene, note), finger: note.finger };
  };
  return { kind, direction, before: at(step - 1), here: at(step) };
}

function meanMs(crossings: readonly CrossingDelay[]): number {
  return Math.round(crossings.reduce((sum, { delayMs }) => sum + delayMs, 0) / crossings.length);
}

export const CROSSING: readonly Situation[] = [apartForNow, bothWays, oneWay, one];
