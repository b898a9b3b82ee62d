import { nextKey } from '../../exercise/index.ts';
import { improvement } from './better.ts';
import { everyNoteRight } from './faults.ts';
import type { Scene, Situation } from './scene.ts';
import { sayKey, valueOf } from './scene.ts';
import { atCriterion, isWorse } from './standing.ts';
import type { Figures } from './standing.ts';
import { inWords, sentenceCase } from './spelling.ts';

/** 12. All well: ready, faster, together, the next key; and before all troubles: rest. */

const tired: Situation = {
  name: 'tired',
  takesSecond: false,
  tell: (scene) => {
    const line = [...scene.earlier, scene.report].slice(-scene.criteria.worseInARow);
    if (line.length < scene.criteria.worseInARow) return null;
    const falling = line.slice(1).every((report, index) => isWorse(report, line[index]!));
    if (!falling) return null;
    return {
      sentence: `Tired? The last ${inWords(line.length)} attempts went down one after another`,
      emphasis: 'Tired?',
      nextStep:
        'rest, and come back tomorrow. If anything hurts or feels numb, stop, and ask your teacher and a health professional.',
      steps: [],
    };
  },
};

/** How many attempts in a row, this one the last, were at the criterion. */
function inARow(scene: Scene): number {
  return rowAtCriterion([...scene.earlier, scene.report], scene);
}

/** How many of these reports, counted from the last, are at the criterion without a break. */
function rowAtCriterion(line: readonly Figures[], scene: Scene): number {
  const first = line.findLastIndex((report) => !atCriterion(report, scene.criteria, scene.report.targetBpm));
  return line.length - 1 - first;
}

/** "every note right and"; where some notes were left unsure, "every note that could be told is right and". */
function rightAnd(scene: Scene, comma = ''): string {
  return `every note${scene.report.unsure.length === 0 ? '' : ' that could be told is'} right${comma} and`;
}

const ready: Situation = {
  name: 'ready',
  takesSecond: false,
  tell: (scene) => {
    if (inARow(scene) < scene.criteria.readyInARow) return null;
    const { hands, key } = scene.exercise.choice;
    const tempo = valueOf(scene.measured.measures.tempoBpm);
    const count = sentenceCase(inWords(scene.criteria.readyInARow));
    if (hands === 'together') {
      const faster = tempo === undefined ? undefined : Math.round(tempo) + 6;
      return {
        sentence: `${sayKey(key)} stands${tempo === undefined ? '' : ` at ${Math.round(tempo)}`}: ${inWords(scene.criteria.readyInARow)} in a row, ${rightAnd(scene)} even`,
        emphasis: `${sayKey(key)} stands`,
        nextStep: `6 to 8 beats faster, or the next key round the circle, ${sayKey(nextKey(key))}.`,
        steps: [],
        ...(faster !== undefined && {
          practice: { fromStep: 0, toStep: scene.exercise.steps.length - 1, tempoBpm: faster },
        }),
      };
    }
    const other = hands === 'right' ? 'left' : 'right';
    const both = rowAtCriterion(scene.alone[other], scene) >= scene.criteria.readyInARow;
    const together = Math.round((2 / 3) * (tempo ?? scene.report.targetBpm ?? 60));
    return {
      sentence: `${count} in a row, ${rightAnd(scene)} even: the ${hands} hand is ready`,
      emphasis: `the ${hands} hand is ready`,
      nextStep: both
        ? `hands together, at ${together}; the ${other} hand is ready too.`
        : `the ${other} hand alone, in the same way; then hands together.`,
      steps: [],
    };
  },
};

const twice: Situation = {
  name: 'twice-at-the-criterion',
  takesSecond: false,
  tell: (scene) =>
    inARow(scene) === 2
      ? {
          sentence: `${sentenceCase(rightAnd(scene, ','))} even, twice in a row. Once more like that`,
          emphasis: 'Once more like that',
          nextStep: 'the same again.',
          steps: [],
        }
      : null,
};

const better: Situation = {
  name: 'better',
  takesSecond: false,
  tell: (scene) => {
    const said = improvement(scene)?.alone;
    if (said === undefined) return null;
    return {
      sentence: sentenceCase(said),
      emphasis: sentenceCase(said.split(', ')[0]!),
      nextStep: 'the same again, to make it stay.',
      steps: [],
    };
  },
};

const once: Situation = {
  name: 'at-the-criterion',
  takesSecond: false,
  tell: (scene) =>
    inARow(scene) === 1
      ? {
          sentence: `${sentenceCase(rightAnd(scene, ','))} even`,
          emphasis: '',
          nextStep: `the same again; ${inWords(scene.criteria.readyInARow)} in a row make it ready.`,
          steps: [],
        }
      : null,
};

const nearly: Situation = {
  name: 'nearly-even',
  takesSecond: false,
  tell: (scene) => {
    const value = valueOf(scene.measured.measures.evennessPercent);
    const { evennessPercent } = scene.criteria;
    if (value === undefined || value <= evennessPercent) return null;
    const what = `the time from note to note varies by ${value.toFixed(1)} %`;
    return {
      sentence: `Not yet quite even: ${what}; up to ${evennessPercent} % counts as even`,
      emphasis: 'Not yet quite even',
      nextStep: 'the same tempo, with the pulse.',
      steps: [],
    };
  },
};

/** What is left when nothing is to be said against it and the criterion cannot be judged. */
const heardAll: Situation = {
  name: 'nothing-to-remark',
  takesSecond: false,
  tell: (scene) => {
    const right = scene.alignment.matched.filter((note) => note.verdict === 'correct').length;
    const unsure = scene.report.unsure.length;
    const doubt = unsure === 0 ? '' : `; ${inWords(unsure)} could not be told`;
    return {
      sentence: everyNoteRight(scene)
        ? 'Every note right'
        : `${right} of ${scene.alignment.matched.length} notes right${doubt}`,
      emphasis: '',
      nextStep: 'the same again.',
      steps: scene.report.unsure.map((note) => note.step),
    };
  },
};

export const TIRED: readonly Situation[] = [tired];
export const PROGRESS: readonly Situation[] = [ready, better, twice, once, nearly, heardAll];
