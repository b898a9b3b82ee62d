import { handsIn, nextKey } from '../../exercise/index.ts';
import type { Hand } from '../../exercise/index.ts';
import { evennessPercent, isMeasured, LEAST_WITH_SHAPE, surelyOver, valueOf } from '../measures/index.ts';
import { improvement } from './better.ts';
import { handIsReady, isReady, rowNow } from './ready.ts';
import { inOctaves } from './octaves.ts';
import { atTempo, placeOf, taskOf, wayUp, wholeOf } from './place.ts';
import type { Advice } from './said/index.ts';
import type { Scene, Situation, Situations } from './scene.ts';
import { handIfBoth, nameOf } from './scene.ts';
import { shapeOf } from './shaping.ts';
import { worstStretch } from './time.ts';
import { timesBefore, turnAbout } from './variety.ts';

/** All well: ready, faster, together, the next key. And what could not be told, asked. */

/** How much faster a key is tried that stands, beats a minute. */
const FASTER_BPM = 6;
const TWO_THIRDS = 2 / 3;

/** How many attempts in a row, this one the last, were at the criterion. */
const inARow = (scene: Scene): number => rowNow(scene).length;
/** The same again, until it is ready. */
const asOftenAsAsked = ({ criteria: { readyInARow, readyDays } }: Scene): Advice => ({
  step: 'the-same-again',
  inARow: readyInARow,
  ...(readyDays > 1 && { days: readyDays }),
});
const allSure = (scene: Scene): boolean => scene.report.unsure.length === 0;

const keyReady: Situation = (scene) => {
  const { hands, key, passage } = scene.exercise.choice;
  const row = scene.criteria.readyInARow;
  if (hands !== 'together' || !isReady(rowNow(scene), scene) || waitsFor(scene) !== null) return null;
  const tempo = valueOf(scene.measured.measures.tempoBpm);
  const atBpm = tempo === undefined ? null : Math.round(tempo);
  const practice = { ...wholeOf(scene, 1), tempoBpm: (atBpm ?? atTempo(scene, 1)) + FASTER_BPM };
  return {
    statement: {
      situation: 'key-ready',
      steps: [],
      faults: 0,
      key: passage === undefined ? key : null,
      atBpm,
      inARow: row,
      allSure: allSure(scene),
    },
    advice:
      passage === undefined
        ? { step: 'faster-or-next-key', task: taskOf(scene, practice), nextKey: nextKey(key) }
        : { step: 'at-the-tempo', task: taskOf(scene, practice) },
    practice,
  };
};

const handReady: Situation = (scene) => {
  const { hands } = scene.exercise.choice;
  const row = scene.criteria.readyInARow;
  if (hands === 'together' || !isReady(rowNow(scene), scene)) return null;
  const { passage } = scene.exercise.choice;
  // Of a passage for one hand there is nothing for the other.
  const isAlone = passage !== undefined && handsIn(passage) !== 'together';
  const hand = scene.handKnown && !isAlone ? hands : null;
  const other = hands === 'right' ? 'left' : 'right';
  const both = handIsReady(other, scene);
  const slowly = wayUp(scene, TWO_THIRDS);
  const together = taskOf(scene, slowly, 'together');
  const faster = { ...wholeOf(scene, 1), tempoBpm: atTempo(scene, 1) + FASTER_BPM };
  return {
    statement: {
      situation: 'hand-ready',
      steps: [],
      faults: 0,
      hand,
      inARow: row,
      allSure: allSure(scene),
    },
    advice:
      hand === null
        ? { step: 'at-the-tempo', task: taskOf(scene, faster) }
        : both
          ? { step: 'hands-together', task: together, other }
          : { step: 'other-hand', hand: other, task: taskOf(scene, wholeOf(scene, 1)) },
    ...(hand === null && { practice: faster }),
    ...(hand !== null && both && { practice: slowly }),
  };
};

/** Of hands together: a hand that was never ready alone, as far as its reports go back; null: none. */
function waitsFor(scene: Scene): Hand | null {
  if (scene.exercise.choice.hands !== 'together') return null;
  return (['left', 'right'] as const).find((hand) => !handIsReady(hand, scene)) ?? null;
}

/** As often in a row as makes it ready, and something else is still asked: another day, or each hand alone first. */
const oftenEnough: Situation = (scene) => {
  const row = rowNow(scene);
  if (row.length < scene.criteria.readyInARow) return null;
  const hand = isReady(row, scene) ? waitsFor(scene) : null;
  return {
    statement: {
      situation: 'often-enough',
      steps: [],
      faults: 0,
      inARow: row.length,
      allSure: allSure(scene),
    },
    advice:
      hand === null
        ? { step: 'on-another-day' }
        : { step: 'other-hand', hand, task: taskOf(scene, wholeOf(scene, 1)) },
  };
};

const better: Situation = (scene) => {
  const improved = improvement(scene);
  if (improved === null) return null;
  return {
    statement: { situation: 'better', steps: [], faults: 0, improved },
    advice: { step: 'make-it-stay' },
  };
};

const twice: Situation = (scene) =>
  inARow(scene) === 2
    ? {
        statement: { situation: 'twice-at-the-criterion', steps: [], faults: 0, allSure: allSure(scene) },
        advice: asOftenAsAsked(scene),
      }
    : null;

const underTempo: Situation = (scene) => {
  const target = scene.report.targetBpm ?? scene.criteria.leastBpm;
  const { measures } = scene.measured;
  const played = valueOf(measures.tempoBpm);
  const evenness = valueOf(measures.evennessPercent);
  if (target === null || played === undefined || evenness === undefined) return null;
  if (evenness > scene.criteria.evennessPercent || played >= target * (1 - scene.criteria.tempoShare))
    return null;
  const practice = { ...wholeOf(scene, 1), tempoBpm: Math.round(Math.min(target, played * 1.06)) };
  return {
    statement: {
      situation: 'under-tempo',
      steps: [],
      faults: 0,
      playedBpm: Math.round(played),
      aimBpm: Math.round(target),
    },
    advice: { step: 'at-the-tempo', task: taskOf(scene, practice) },
    practice,
  };
};

const once: Situation = (scene) =>
  inARow(scene) === 1
    ? {
        statement: { situation: 'at-the-criterion', steps: [], faults: 0, allSure: allSure(scene) },
        advice: asOftenAsAsked(scene),
      }
    : null;

const nearly: Situation = (scene) => {
  const { body } = shapeOf(scene);
  const figure = evennessPercent(body);
  const boundPercent = scene.criteria.evennessPercent;
  // Few intervals say little about how even somebody plays.
  if (body.length < LEAST_WITH_SHAPE - 1) return null;
  if (!isMeasured(figure) || !surelyOver(figure, boundPercent, scene.criteria)) return null;
  const percent = figure.value;
  const practice = worstStretch(scene, 1);
  const task = taskOf(scene, practice);
  return {
    statement: { situation: 'nearly-even', steps: [], faults: 0, percent, boundPercent },
    advice: turnAbout<Advice>(timesBefore(scene, 'nearly-even', 'uneven'), [
      { step: 'same-tempo-with-the-pulse', task },
      { step: 'rhythms', task },
    ]),
    practice,
  };
};

/** What is left when nothing is to be said against it and the criterion cannot be judged. */
const heardAll: Situation = (scene) => {
  const { matched } = scene.alignment;
  const right = matched.filter((note) => note.verdict === 'correct').length;
  const { unsure } = scene.report;
  return {
    statement: {
      situation: 'nothing-to-remark',
      steps: unsure.map((note) => note.step),
      faults: 0,
      right,
      of: matched.length,
      unsure: unsure.length,
    },
    advice: asOftenAsAsked(scene),
  };
};

/** The first of these that holds is said where nothing is wrong. */
export const PROGRESS: Situations = {
  'key-ready': keyReady,
  'hand-ready': handReady,
  'often-enough': oftenEnough,
  better,
  'twice-at-the-criterion': twice,
  'under-tempo': underTempo,
  'at-the-criterion': once,
  'nearly-even': nearly,
  'nothing-to-remark': heardAll,
};

/** Notes of which it cannot be told whether they were struck: asked, never blamed. A held common tone is none of them. */
const notSure: Situation = (scene) => {
  const unsure = scene.alignment.matched.filter(
    (note) => note.verdict === 'unsure' && note.heldOver !== true,
  );
  if (unsure.length === 0) return null;
  const notes = inOctaves(
    unsure.map(({ step, expected }) => ({
      step,
      note: nameOf(expected),
      place: placeOf(scene, step),
      hand: handIfBoth(scene, expected.hand),
    })),
    unsure.map(({ expected }) => expected.midi),
  );
  return {
    statement: {
      situation: 'not-sure',
      steps: [...new Set(notes.map(({ step }) => step))],
      faults: 0,
      notes,
    },
    advice: { step: 'the-same-again', inARow: null },
  };
};

export const ASKED: Situations = { 'not-sure': notSure };
