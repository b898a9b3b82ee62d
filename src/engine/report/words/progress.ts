import { nextKey } from '../../exercise/index.ts';
import { improvement } from './better.ts';
import { everyNoteRight } from './faults.ts';
import type { Scene, Situation } from './scene.ts';
import { sayKey, valueOf } from './scene.ts';
import { atCriterion } from './standing.ts';
import type { Figures } from './standing.ts';

/** 12. All well: ready, faster, together, the next key. */

/** How much faster a key is tried that stands, beats a minute; 6 to 8 in the words. */
const FASTER_BPM = 6;

/** How many attempts in a row, this one the last, were at the criterion. */
function inARow(scene: Scene): number {
  return rowAtCriterion([...scene.earlier, scene.report], scene);
}

/** How many of these reports, counted from the last, are at the criterion without a break. */
function rowAtCriterion(line: readonly Figures[], scene: Scene): number {
  const first = line.findLastIndex((report) => !atCriterion(report, scene.criteria, scene.report.targetBpm));
  return line.length - 1 - first;
}

const allSure = (scene: Scene): boolean => scene.report.unsure.length === 0;

const ready: Situation = {
  name: 'ready',
  takesSecond: false,
  tell: (scene) => {
    if (inARow(scene) < scene.criteria.readyInARow) return null;
    const { hands, key } = scene.exercise.choice;
    const tempo = valueOf(scene.measured.measures.tempoBpm);
    const attempts = scene.criteria.readyInARow;
    if (hands === 'together') {
      const atBpm = tempo === undefined ? null : Math.round(tempo);
      const said = scene.wording.keyStands({
        key: sayKey(scene, key),
        nextKey: sayKey(scene, nextKey(key)),
        atBpm,
        inARow: attempts,
        allSure: allSure(scene),
      });
      const toStep = scene.exercise.steps.length - 1;
      return {
        ...said,
        steps: [],
        ...(atBpm !== null && { practice: { fromStep: 0, toStep, tempoBpm: atBpm + FASTER_BPM } }),
      };
    }
    const other = hands === 'right' ? 'left' : 'right';
    const both = rowAtCriterion(scene.alone[other], scene) >= attempts;
    const togetherBpm = both ? Math.round((2 / 3) * (tempo ?? scene.report.targetBpm ?? 60)) : null;
    const given = { hand: hands, other, inARow: attempts, allSure: allSure(scene), togetherBpm } as const;
    return { ...scene.wording.handReady(given), steps: [] };
  },
};

const twice: Situation = {
  name: 'twice-at-the-criterion',
  takesSecond: false,
  tell: (scene) => (inARow(scene) === 2 ? { ...scene.wording.twice(allSure(scene)), steps: [] } : null),
};

const better: Situation = {
  name: 'better',
  takesSecond: false,
  tell: (scene) => {
    const said = improvement(scene)?.alone;
    if (said === undefined) return null;
    return { ...scene.wording.better(said), steps: [] };
  },
};

const once: Situation = {
  name: 'at-the-criterion',
  takesSecond: false,
  tell: (scene) =>
    inARow(scene) === 1
      ? { ...scene.wording.once(allSure(scene), scene.criteria.readyInARow), steps: [] }
      : null,
};

const nearly: Situation = {
  name: 'nearly-even',
  takesSecond: false,
  tell: (scene) => {
    const value = valueOf(scene.measured.measures.evennessPercent);
    const { evennessPercent } = scene.criteria;
    if (value === undefined || value <= evennessPercent) return null;
    return { ...scene.wording.nearlyEven(value, evennessPercent), steps: [] };
  },
};

/** What is left when nothing is to be said against it and the criterion cannot be judged. */
const heardAll: Situation = {
  name: 'nothing-to-remark',
  takesSecond: false,
  tell: (scene) => {
    const { matched } = scene.alignment;
    const right = matched.filter((note) => note.verdict === 'correct').length;
    const { unsure } = scene.report;
    return {
      ...scene.wording.nothingToRemark(right, matched.length, unsure.length, everyNoteRight(scene)),
      steps: unsure.map((note) => note.step),
    };
  },
};

export const PROGRESS: readonly Situation[] = [ready, better, twice, once, nearly, heardAll];
