import { median, standardDeviation } from '../../base/statistics.ts';
import {
  driftPercent,
  driftTempi,
  evennessDriftRemovedPercent,
  evennessPercent,
  isMeasured,
  shareOver,
  shareOverByFew,
  shareOverByOnset,
  sureOf,
  surelyOver,
  valueOf,
} from '../measures/index.ts';
import { inOctaves } from './octaves.ts';
import { practiceAround, spotOf, taskOf, wayUp } from './place.ts';
import type { Advice } from './said/index.ts';
import type { Estimate } from '../types.ts';
import type { Scene, Situation, Situations } from './scene.ts';
import { isChordForm } from './scene.ts';
import { isRhythm, pairsOf, shapeOf, swayOf } from './shaping.ts';
import { timesBefore, turnAbout } from './variety.ts';

/** Evenness, single late notes, and the tempo. What was meant (shaping.ts) is taken out before anything is called uneven. */

const lateTurn: Situation = (scene) => {
  const { measures, unbroken: intervals } = scene.measured;
  const turn = scene.exercise.steps.find((step) => step.turn)?.step;
  const others = intervals.filter((interval) => interval.fromStep !== turn).map((interval) => interval.ioiMs);
  const usual = median(others);
  if (turn === undefined || usual === undefined || swayOf(scene) !== null) return null;
  // A change of chord that hesitates there is told as that.
  if (isChordForm(scene.exercise) && scene.measured.slowestChange?.step === turn + 1) return null;
  const bound = Math.max(
    scene.criteria.turnShareOfInterval * usual,
    scene.criteria.clearlyAudibleSds * (standardDeviation(others) ?? 0),
  );
  const { turnDeviationMs } = measures;
  if (!intervals.some(({ fromStep }) => fromStep === turn)) return null;
  if (!isMeasured(turnDeviationMs) || !surelyOver(turnDeviationMs, bound, scene.criteria)) return null;
  const chords = isChordForm(scene.exercise);
  const [before, after] = chords ? [1, 2] : [3, 3];
  const practice = practiceAround(scene, turn - before, turn + after, 0.8);
  const task = taskOf(scene, practice);
  return {
    statement: {
      situation: 'late-at-the-turn',
      steps: [turn, turn + 1],
      faults: 1,
      sure: shareOver(turnDeviationMs, bound),
      lateMs: Math.round(turnDeviationMs.value),
      chords,
    },
    gravity: turnDeviationMs.value / (scene.criteria.turnShareOfInterval * usual),
    advice: turnAbout<Advice>(timesBefore(scene, 'late-at-the-turn'), [
      { step: 'think-of-the-way-down', task, chords },
      { step: 'slower-with-the-pulse', task },
    ]),
    practice,
  };
};

/** Of single notes that come late so many are told as such; more are unevenness. */
const MOST_LATE_NOTES = 2;

/** A note that comes late by itself, neither into a crossing nor at the turn nor in the ending. */
const lateNote: Situation = (scene) => {
  if (isChordForm(scene.exercise) || swayOf(scene) !== null || pairsOf(scene) !== null) return null;
  const { criteria, measured, exercise, heard } = scene;
  const known = scene.handKnown || exercise.choice.hands === 'together';
  const turn = exercise.steps.find((step) => step.turn)?.step;
  const ending = new Set(shapeOf(scene).ending.map(({ step }) => step));
  const own = measured.intervals.filter(
    ({ step, fromStep, intoCrossing }) => !ending.has(step) && fromStep !== turn && !(known && intoCrossing),
  );
  const usual = median(own.map(({ ioiMs }) => ioiMs));
  if (usual === undefined || own.length < 6) return null;
  const away = own.map(({ ioiMs }) => Math.abs(ioiMs - usual));
  const scatterMs = 1.4826 * median(away)!;
  const boundMs = Math.max(criteria.crossingShareOfInterval * usual, criteria.clearlyAudibleSds * scatterMs);
  const sure = sureOf(own.length, criteria);
  const stopped = new Set(
    scene.alignment.remarks.flatMap((remark) => (remark.kind === 'stopped' ? [remark.atStep + 1] : [])),
  );
  const late = own
    .map(({ step, ioiMs, noiseVariance, beats }) => ({
      step,
      figure: { value: ioiMs - usual, plusMinus: Math.sqrt(noiseVariance) * beats },
    }))
    .filter(({ step, figure }) => !stopped.has(step) && shareOverByOnset(figure, boundMs) >= sure)
    .sort((a, b) => b.figure.value - a.figure.value);
  const [worst] = late;
  if (worst === undefined || late.length > MOST_LATE_NOTES || heard.notes.length === 0) return null;
  const practice = practiceAround(scene, worst.step - 2, worst.step + 1, 0.75);
  const spots = inOctaves(
    late.map(({ step }) => spotOf(scene, step)),
    late.map(({ step }) => exercise.steps[step]!.notes.at(-1)!.midi),
  );
  return {
    statement: {
      situation: 'late-note',
      steps: late.map(({ step }) => step),
      faults: late.length,
      sure: shareOverByOnset(worst.figure, boundMs),
      notes: late.map(({ step, figure }, at) => ({
        step,
        at: spots[at]!,
        lateMs: Math.round(figure.value),
      })),
    },
    gravity: worst.figure.value / (criteria.crossingShareOfInterval * usual),
    advice: turnAbout<Advice>(timesBefore(scene, 'late-note'), [
      { step: 'slower-with-the-pulse', task: taskOf(scene, practice) },
      { step: 'rhythms', task: taskOf(scene, practice) },
    ]),
    practice,
  };
};

/** So many attempts in a row, this one the last, tell a falling series from chance. */
const TIRED_ATTEMPTS = 4;

/** How far the evenness of so few notes may lie from the player's own, SD: the ear's error, and σ / √(2(n − 1)) of a normal distribution. */
const byChance = ({ even, count }: { readonly even: Estimate; readonly count: number }): number =>
  Math.hypot(even.plusMinus ?? 0, even.value / Math.sqrt(2 * Math.max(1, count - 1)));

/**
 * Less even from attempt to attempt at one tempo in one sitting, and no longer even: asked, since nothing else tells it. Each is
 * so by more than the errors of both; and from the first to the last by more than so few notes differ by chance.
 */
const tired: Situation = (scene) => {
  const { criteria } = scene;
  const row = [...scene.inSitting, scene.report].slice(-TIRED_ATTEMPTS).map(({ measures }) => measures);
  const figures = row.flatMap(({ evennessPercent: even, tempoBpm, intervals }) =>
    isMeasured(even) && isMeasured(tempoBpm) ? [{ even, bpm: tempoBpm.value, count: intervals.length }] : [],
  );
  const [first, last] = [figures[0], figures.at(-1)];
  if (figures.length < TIRED_ATTEMPTS || first === undefined || last === undefined) return null;
  const oneTempo = figures.every(({ bpm }) => Math.abs(bpm / first.bpm - 1) <= criteria.sameTempoShare);
  const falls = figures.slice(1).every(({ even }, at) => {
    const before = figures[at]!.even;
    return even.value - before.value > Math.hypot(even.plusMinus ?? 0, before.plusMinus ?? 0);
  });
  const whole = {
    value: last.even.value - first.even.value,
    plusMinus: Math.hypot(byChance(first), byChance(last)),
  };
  const sure = Math.min(shareOver(whole, 0), shareOver(last.even, criteria.unevenPercent));
  if (!oneTempo || !falls || sure < criteria.sure) return null;
  return {
    statement: {
      situation: 'tired',
      steps: [],
      faults: 1,
      sure,
      attempts: TIRED_ATTEMPTS,
      fromPercent: first.even.value,
      toPercent: last.even.value,
    },
    gravity: last.even.value / criteria.unevenPercent,
    advice: { step: 'rest' },
  };
};

const limping: Situation = (scene) => {
  const pairs = pairsOf(scene);
  if (pairs === null || isRhythm(pairs) || pairs.apart <= scene.criteria.limpingShare) return null;
  const figure = scene.measured.measures.evennessPercent;
  if (!surelyOver(figure, scene.criteria.evennessPercent, scene.criteria)) return null;
  const practice = wayUp(scene, 0.8);
  return {
    statement: {
      situation: 'uneven-in-pairs',
      steps: [],
      faults: 1,
      sure: shareOver(figure, scene.criteria.evennessPercent),
      rhythm: pairs.rhythm,
    },
    gravity: pairs.apart / scene.criteria.limpingShare,
    advice: turnAbout<Advice>(timesBefore(scene, 'uneven-in-pairs'), [
      {
        step: 'the-other-rhythm',
        task: taskOf(scene, practice),
        rhythm: pairs.rhythm === 'long-short' ? 'short-long' : 'long-short',
      },
      { step: 'slower-with-the-pulse', task: taskOf(scene, practice) },
    ]),
    practice,
  };
};

const uneven: Situation = (scene) => {
  const pairs = pairsOf(scene);
  if (swayOf(scene) !== null || (pairs !== null && isRhythm(pairs))) return null;
  const { body } = shapeOf(scene);
  const bound = scene.criteria.unevenPercent;
  const figure = evennessDriftRemovedPercent(body);
  if (!isMeasured(figure) || !surelyOver(figure, bound, scene.criteria)) return null;
  const percent = valueOf(evennessPercent(body))!;
  const practice = worstStretch(scene, 0.75);
  const task = taskOf(scene, practice);
  return {
    statement: {
      situation: 'uneven',
      steps: [],
      faults: 1,
      sure: shareOver(figure, bound),
      percent,
      boundPercent: scene.criteria.evennessPercent,
    },
    gravity: figure.value / bound,
    advice: turnAbout<Advice>(timesBefore(scene, 'uneven', 'nearly-even'), [
      { step: 'slower-with-the-pulse', task },
      { step: 'rhythms', task },
      { step: 'one-note-more', task },
    ]),
    practice,
  };
};

/** The part, read at a glance, in which the notes stray most. */
export function worstStretch(scene: Scene, share: number) {
  const last = scene.exercise.steps.length - 1;
  const strays = new Map(scene.measured.measures.intervals.map((one) => [one.step, one.deviationMs ** 2]));
  const starts = scene.exercise.steps.map(({ step }) => practiceAround(scene, step, last, share));
  const straying = ({ fromStep, toStep }: (typeof starts)[number]): number =>
    Array.from({ length: toStep - fromStep }, (_, at) => strays.get(fromStep + 1 + at) ?? 0).reduce(
      (sum, one) => sum + one,
      0,
    );
  return starts.reduce((a, b) => (straying(b) > straying(a) ? b : a));
}

/** Faster or slower: either may come about by chance. */
const WAYS = 2;

const drift: Situation = (scene) => {
  if (swayOf(scene) !== null) return null;
  // Late crossings on one way only look like a drift of the whole, so the plain intervals decide.
  const intervals = shapeOf(scene).body.filter((interval) => !interval.intoCrossing);
  const figure = driftPercent(intervals);
  const tempi = driftTempi(intervals);
  if (!isMeasured(figure) || tempi === undefined) return null;
  const size = { ...figure, value: Math.abs(figure.value) };
  // A line has two numbers; what is left of the intervals says how sure it is.
  const sure = shareOverByFew(size, scene.criteria.driftPercent, intervals.length - 2);
  if (sure < sureOf(WAYS, scene.criteria)) return null;
  const practice = practiceAround(scene, 0, scene.exercise.steps.length - 1, 0.9);
  return {
    statement: {
      situation: 'drift',
      steps: [],
      faults: 1,
      sure,
      fromBpm: Math.round(tempi.fromBpm),
      toBpm: Math.round(tempi.toBpm),
    },
    // Among notes that stray, a line is tilted by chance: only what is surely there weighs.
    gravity: (size.value - (size.plusMinus ?? 0)) / scene.criteria.driftPercent / 2,
    advice: turnAbout<Advice>(timesBefore(scene, 'drift'), [
      { step: 'slower-with-the-pulse', task: taskOf(scene, practice) },
      { step: 'one-note-more', task: taskOf(scene, practice) },
    ]),
    practice,
  };
};

export const LATE_NOTES: Situations = { 'late-note': lateNote };
export const TURN: Situations = { 'late-at-the-turn': lateTurn };
export const EVENNESS: Situations = { tired, 'uneven-in-pairs': limping, uneven };
export const DRIFT: Situations = { drift };
