import { median } from '../../base/statistics.ts';
import { isMeasured, softestInner } from '../measures/index.ts';
import type { Situation } from './scene.ts';
import { fingerOf, placeOf, say, surelyOver, valueOf } from './scene.ts';

/** 9. Loudness, and 10. touch. */

const thumb: Situation = {
  name: 'thumb-loud',
  takesSecond: true,
  tell: (scene) => {
    const figure = scene.measured.measures.thumbAccentDb;
    if (!surelyOver(figure, scene.criteria.thumbAccentDb, scene.criteria)) return null;
    const steps = scene.exercise.steps.filter((step) => step.notes.some((note) => note.finger === 1));
    return { ...scene.wording.thumbLoud(valueOf(figure)!), steps: steps.map((step) => step.step) };
  },
};

const fading: Situation = {
  name: 'ends-fade',
  takesSecond: true,
  tell: (scene) => {
    const { ends } = scene.measured;
    const found = (['topDb', 'bottomDb'] as const).find((end) => {
      const figure = ends[end];
      return (
        isMeasured(figure) &&
        surelyOver({ ...figure, value: -figure.value }, scene.criteria.endsFadeDb, scene.criteria)
      );
    });
    if (found === undefined) return null;
    const db = Math.round(-valueOf(ends[found])!);
    const last = scene.exercise.steps.length - 1;
    const turn = scene.exercise.steps.find((step) => step.turn)?.step;
    return {
      ...scene.wording.endFades(found === 'topDb' ? 'top' : 'end', db),
      steps: found === 'topDb' && turn !== undefined ? [turn] : [last],
    };
  },
};

const innerSoft: Situation = {
  name: 'inner-note-soft',
  takesSecond: true,
  tell: (scene) => {
    for (const { hand, strikes } of scene.measured.byHand) {
      const soft = softestInner(strikes);
      if (soft === undefined) continue;
      const size = { ...soft.figure, value: -soft.figure.value };
      if (!surelyOver(size, scene.criteria.innerSoftDb, scene.criteria)) continue;
      return {
        ...scene.wording.innerSoft(fingerOf(scene, { hand, finger: soft.finger }), Math.round(size.value)),
        steps: soft.steps,
      };
    }
    return null;
  },
};

const detached: Situation = {
  name: 'detached',
  takesSecond: true,
  tell: (scene) => {
    const { form } = scene.exercise.choice;
    if (form !== 'arpeggio' && form !== 'scale') return null;
    const { joins, measures } = scene.measured;
    const { detachedMs } = scene.criteria;
    const gap = isMeasured(measures.touchMs)
      ? { ...measures.touchMs, value: -measures.touchMs.value }
      : measures.touchMs;
    if (surelyOver(gap, detachedMs, scene.criteria))
      return { ...scene.wording.detached(Math.round(valueOf(gap)!)), steps: [] };
    // A gap that is there only because the next note came late is told as that.
    const lateMs = new Map(measures.intervals.map((one) => [one.step, Math.max(0, one.deviationMs)]));
    if (!isMeasured(measures.touchMs)) return null;
    const usualMs = measures.touchMs.value;
    const scatterMs = 1.4826 * (median(joins.map((join) => Math.abs(join.overlapMs - usualMs))) ?? 0);
    const boundMs = Math.max(scene.criteria.gapMs, scene.criteria.gapScatters * scatterMs - usualMs);
    const open = joins.filter((join) => join.overlapMs + (lateMs.get(join.step) ?? 0) < -boundMs);
    if (open.length === 0 || open.length > joins.length / 3) return null;
    const widest = open.reduce((a, b) => (b.overlapMs < a.overlapMs ? b : a));
    const into = say(scene, scene.exercise.steps[widest.step]!.notes.at(-1)!);
    const from = say(scene, scene.exercise.steps[widest.step - 1]!.notes.at(-1)!);
    return {
      ...scene.wording.detachedOnce(from, { note: into, place: placeOf(scene, widest.step - 1) }),
      steps: [widest.step - 1, widest.step],
    };
  },
};

export const LOUDNESS: readonly Situation[] = [innerSoft, thumb, fading];
export const TOUCH: readonly Situation[] = [detached];
