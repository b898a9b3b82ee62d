import { median } from '../../base/statistics.ts';
import type { CrossingDelay, Figure, Measures } from '../types.ts';
import { isMeasured, shareOver, surelyOver, valueOf } from '../measures/index.ts';
import type { ExpectedNote } from '../../exercise/index.ts';
import { octavesOf } from './octaves.ts';
import { practiceAround, taskOf, wayUp } from './place.ts';
import { inPosition } from './position.ts';
import type { Advice, CrossingFacts, Saying } from './said/index.ts';
import type { Found, Practice, Scene, Situation, Situations } from './scene.ts';
import { handIfBoth, nameOf } from './scene.ts';
import { timesBefore, turnAbout } from './variety.ts';

/*
 * Crossings late: one, every one of a direction, both directions. A movement is named before what follows from it. Where the
 * hand is not known nothing is said of crossings: they lie elsewhere for the other one.
 */

const TWO_THIRDS = 2 / 3;
const CROSSINGS = ['crossing-late', 'crossing-late-one-direction', 'crossing-late-both-ways'] as const;

/** How many times over the just-noticeable or allowed delay: what makes one trouble of time graver than another. */
function timesOver(scene: Scene, late: readonly CrossingDelay[]): number {
  const share = scene.criteria.crossingShareOfInterval;
  return Math.max(...late.map(({ ratio }) => (ratio - 1) / share), 1);
}

/** Both hands together, and late both ways or much worse than each hand alone. */
const apartForNow: Situation = (scene) => {
  if (scene.exercise.choice.hands !== 'together') return null;
  const bothLate = bothWays(scene);
  const worse = muchWorse(scene);
  if (bothLate === null && worse === null) return null;
  const late = lateOnes(scene);
  const practice = wayUp(scene, TWO_THIRDS);
  return {
    statement: {
      situation: 'hands-apart-for-now',
      steps: stepsOf(late),
      faults: Math.max(1, late.length),
      sure: worse?.sure ?? leastSure(late),
      reason: worse?.reason ?? { kind: 'crossings' },
    },
    gravity: Math.max(scene.criteria.togetherWorseTimes, bothLate?.gravity ?? 0),
    advice: turnAbout<Advice>(timesBefore(scene, 'hands-apart-for-now'), [
      { step: 'each-hand-alone', task: taskOf(scene, practice) },
      { step: 'stop-on-each-beat', task: taskOf(scene, practice) },
    ]),
    practice,
  };
};

/**
 * Much worse than each hand alone: unevenness, or the delay of the crossings, over half as much again as that of the worse
 * single hand at about this tempo, with both figures; null: not so, or not known.
 */
function muchWorse(scene: Scene): {
  readonly reason: Saying<'hands-apart-for-now'>['reason'];
  readonly sure: number;
} | null {
  const { evennessPercent, crossingDelayMs } = scene.measured.measures;
  const { criteria } = scene;
  const time = worseThanAlone(scene, evennessPercent, (own) => own.evennessPercent, criteria.evennessPercent);
  if (time !== null) return { reason: { kind: 'uneven', ...time.both }, sure: time.sure };
  const leastMs = criteria.crossingShareOfInterval * usualIntervalMs(scene);
  const delay = worseThanAlone(scene, crossingDelayMs, (own) => own.crossingDelayMs, leastMs);
  return delay === null ? null : { reason: { kind: 'delay', ...delay.both }, sure: delay.sure };
}

/** A figure now and the worse of both hands alone, rounded; null where it is not over so many times that one and over `least`. */
function worseThanAlone(
  { alone, criteria, measured }: Scene,
  now: Figure,
  of: (measures: Measures) => Figure,
  least: number,
): { readonly both: { readonly together: number; readonly alone: number }; readonly sure: number } | null {
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
  const bound = Math.max(criteria.togetherWorseTimes * worst, least);
  if (!surelyOver(now, bound, criteria)) return null;
  return {
    both: { together: Math.round(now.value), alone: Math.round(worst) },
    sure: shareOver(now, bound),
  };
}

function usualIntervalMs({ measured }: Scene): number {
  return median(measured.intervals.map(({ ioiMs }) => ioiMs)) ?? Infinity;
}

const bothWays: Situation = (scene) => {
  const [up, down] = [group(scene, 'up'), group(scene, 'down')];
  if (!up.every || !down.every || up.late.length + down.late.length < 2) return null;
  const late = [...up.late, ...down.late];
  const practice = wayUp(scene, TWO_THIRDS);
  return {
    statement: {
      situation: 'crossing-late-both-ways',
      steps: stepsOf(late),
      faults: late.length,
      sure: leastSure(late),
      lateMs: meanMs(late),
    },
    gravity: timesOver(scene, late),
    advice: turnAbout<Advice>(timesBefore(scene, ...CROSSINGS), [
      { step: 'one-way-first', task: taskOf(scene, practice) },
      { step: 'cross-in-rhythm', task: taskOf(scene, practice), rhythm: 'long-short' },
    ]),
    practice,
  };
};

const oneWay: Situation = (scene) => {
  const chosen = (['up', 'down'] as const)
    .map((direction) => group(scene, direction))
    .find((one) => one.every && one.late.length >= 2);
  if (chosen === undefined || lateOnes(scene).length > chosen.late.length) return null;
  const { late } = chosen;
  const [first] = late;
  const practice = practiceAround(scene, first!.step - 2, first!.step + 1, TWO_THIRDS);
  return {
    statement: {
      situation: 'crossing-late-one-direction',
      steps: stepsOf(late),
      faults: late.length,
      sure: leastSure(late),
      crossing: crossingAt(scene, first!),
      sameNote: new Set(late.map((crossing) => crossingAt(scene, crossing).to)).size === 1,
      times: late.length,
      lateMs: meanMs(late),
    },
    gravity: timesOver(scene, late),
    ...wayTo(scene, first!, practice),
  };
};

const some: Situation = (scene) => {
  const late = [...lateOnes(scene)].sort((a, b) => b.delayMs - a.delayMs);
  const [worst] = late;
  if (worst === undefined) return null;
  const practice = practiceAround(scene, worst.step - 2, worst.step + 1, TWO_THIRDS);
  const crossings = late.map((one) => crossingAt(scene, one));
  const octaves = octavesOf(
    crossings,
    late.map((one) => noteAfter(scene, one).midi),
  );
  return {
    statement: {
      situation: 'crossing-late',
      steps: stepsOf(late),
      faults: late.length,
      sure: leastSure(late),
      crossings: late.map((one, at) => ({
        step: one.step,
        crossing: { ...crossings[at]!, ...(octaves[at] !== undefined && { octave: octaves[at] }) },
        lateMs: Math.round(one.delayMs),
      })),
    },
    gravity: timesOver(scene, late),
    ...wayTo(scene, worst, practice),
  };
};

/** One of the ways to a crossing in time, with its stretch; a position has one of its own. */
function wayTo(
  scene: Scene,
  { step, hand }: CrossingDelay,
  practice: Practice,
): Pick<Found, 'advice' | 'practice'> {
  const task = taskOf(scene, practice, handIfBoth(scene, hand));
  const blocked = inPosition(scene, step, hand, practice, task);
  const [advice, own] = turnAbout<readonly [Advice, Practice]>(timesBefore(scene, ...CROSSINGS), [
    [{ step: 'cross-early', task }, practice],
    [{ step: 'cross-in-rhythm', task, rhythm: 'long-short' }, practice],
    ...(blocked === null ? [] : [blocked]),
  ]);
  return { advice, practice: own };
}

const lateOnes = ({ measured, handKnown, exercise }: Scene): readonly CrossingDelay[] =>
  handKnown || exercise.choice.hands === 'together'
    ? measured.measures.crossings.filter((crossing) => crossing.late)
    : [];

/** All of them are late: as sure as the least sure of them. */
function leastSure(late: readonly CrossingDelay[]): number {
  return Math.min(...late.map(({ sure = 1 }) => sure));
}

/** Steps at which a crossing was late, each once. */
function stepsOf(late: readonly CrossingDelay[]): readonly number[] {
  return [...new Set(late.map(({ step }) => step))];
}

function group(scene: Scene, direction: 'up' | 'down'): { late: readonly CrossingDelay[]; every: boolean } {
  const all = scene.measured.measures.crossings.filter((crossing) => crossing.direction === direction);
  const late = lateOnes(scene).filter((crossing) => crossing.direction === direction);
  return { late, every: all.length > 0 && late.length === all.length };
}

const noteAfter = (scene: Scene, { step, hand }: CrossingDelay): ExpectedNote =>
  scene.exercise.steps[step]!.notes.find((one) => one.hand === hand)!;

/** A crossing by the note that it leads to. */
function crossingAt(scene: Scene, crossing: CrossingDelay): CrossingFacts {
  const { hand, kind, direction } = crossing;
  return { kind, direction, to: nameOf(noteAfter(scene, crossing)), hand: handIfBoth(scene, hand) };
}

function meanMs(crossings: readonly CrossingDelay[]): number {
  return Math.round(crossings.reduce((sum, { delayMs }) => sum + delayMs, 0) / crossings.length);
}

/** The first of these that holds tells all late crossings. */
export const CROSSING: Situations = {
  'hands-apart-for-now': apartForNow,
  'crossing-late-both-ways': bothWays,
  'crossing-late-one-direction': oneWay,
  'crossing-late': some,
};
