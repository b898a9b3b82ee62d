import { median, standardDeviation } from '../../base/statistics.ts';
import { driftPercent, driftTempi } from '../measures/index.ts';
import type { Scene, Situation } from './scene.ts';
import { atTempo, isChordForm, practiceAround, surelyOver, valueOf } from './scene.ts';

/** 7. Evenness, and 11. drift. */

const lateTurn: Situation = {
  name: 'late-at-the-turn',
  takesSecond: true,
  tell: (scene) => {
    const { measures, intervals } = scene.measured;
    const turn = scene.exercise.steps.find((step) => step.turn)?.step;
    const others = intervals
      .filter((interval) => interval.fromStep !== turn)
      .map((interval) => interval.ioiMs);
    const usual = median(others);
    if (turn === undefined || usual === undefined) return null;
    const bound = Math.max(
      scene.criteria.turnShareOfInterval * usual,
      scene.criteria.clearlyAudibleSds * (standardDeviation(others) ?? 0),
    );
    if (!surelyOver(measures.turnDeviationMs, bound, scene.criteria)) return null;
    const ms = Math.round(valueOf(measures.turnDeviationMs)!);
    return {
      ...scene.wording.lateTurn(ms, isChordForm(scene.exercise)),
      steps: [turn, turn + 1],
      practice: practiceAround(scene, turn - 3, turn + 3, 0.8),
    };
  },
};

const limping: Situation = {
  name: 'uneven-in-pairs',
  takesSecond: false,
  tell: (scene) => {
    const { measures } = scene.measured;
    const pairs = pairsOf(scene);
    if (
      pairs === undefined ||
      !surelyOver(measures.evennessPercent, scene.criteria.evennessPercent, scene.criteria)
    )
      return null;
    return {
      ...scene.wording.limping(pairs.first > pairs.second ? 'first' : 'second'),
      steps: [],
      practice: practiceAround(scene, 0, scene.exercise.steps.length - 1, 0.8),
    };
  },
};

/** Median interval of the odd and of the even steps, where every other one is longer by the criterion's share; else undefined. */
function pairsOf(scene: Scene): { first: number; second: number } | undefined {
  const { intervals } = scene.measured;
  if (intervals.length < 6) return undefined;
  const of = (rest: number): number[] =>
    intervals.filter((interval) => interval.fromStep % 2 === rest).map((interval) => interval.perBeatMs);
  const first = of(0);
  const second = of(1);
  const [a, b] = [median(first), median(second)];
  if (a === undefined || b === undefined) return undefined;
  const apart = Math.abs(a - b) / Math.min(a, b);
  const [longer, shorter] = a > b ? [first, second] : [second, first];
  const middle = (a + b) / 2;
  const steady = [...longer.map((value) => value > middle), ...shorter.map((value) => value < middle)];
  const share = steady.filter(Boolean).length / steady.length;
  return apart > scene.criteria.limpingShare && share >= 0.8 ? { first: a, second: b } : undefined;
}

const uneven: Situation = {
  name: 'uneven',
  takesSecond: false,
  tell: (scene) => {
    const { measures } = scene.measured;
    const figure = measures.evennessDriftRemovedPercent;
    if (!surelyOver(figure, scene.criteria.unevenPercent, scene.criteria)) return null;
    const percent = Math.round(valueOf(measures.evennessPercent)!);
    const practice = practiceAround(scene, 0, scene.exercise.steps.length - 1, 0.75);
    const { hands } = scene.exercise.choice;
    return { ...scene.wording.uneven(percent, hands, practice.tempoBpm), steps: [], practice };
  },
};

const drift: Situation = {
  name: 'drift',
  takesSecond: true,
  tell: (scene) => {
    // Late crossings on one way only look like a drift of the whole, so the plain intervals decide.
    const intervals = scene.measured.intervals.filter((interval) => !interval.intoCrossing);
    const figure = driftPercent(intervals);
    const value = valueOf(figure);
    const tempi = driftTempi(intervals);
    if (value === undefined || tempi === undefined) return null;
    const size = { ...figure, value: Math.abs(value) };
    if (!surelyOver(size, scene.criteria.driftPercent, scene.criteria)) return null;
    const practice = practiceAround(scene, 0, scene.exercise.steps.length - 1, 0.9);
    const [from, to] = [Math.round(tempi.fromBpm), Math.round(tempi.toBpm)];
    return { ...scene.wording.drift(value > 0, from, to, practice.tempoBpm), steps: [], practice };
  },
};

const underTempo: Situation = {
  name: 'under-tempo',
  takesSecond: false,
  tell: (scene) => {
    const target = scene.report.targetBpm;
    const { measures } = scene.measured;
    const played = valueOf(measures.tempoBpm);
    const evenness = valueOf(measures.evennessPercent);
    if (target === null || played === undefined || evenness === undefined) return null;
    if (evenness > scene.criteria.evennessPercent || played >= target * (1 - scene.criteria.tempoShare))
      return null;
    const next = Math.min(target, atTempo(scene, 1.06));
    return {
      ...scene.wording.underTempo(Math.round(played), Math.round(target), next),
      steps: [],
      practice: { fromStep: 0, toStep: scene.exercise.steps.length - 1, tempoBpm: next },
    };
  },
};

export const EVENNESS: readonly Situation[] = [lateTurn, limping, uneven];
export const TEMPO: readonly Situation[] = [drift, underTempo];
