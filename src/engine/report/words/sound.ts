import { median } from '../../base/statistics.ts';
import { isMeasured, softestInner } from '../measures/index.ts';
import type { Situation } from './scene.ts';
import { say, sayFingerOf, surelyOver, valueOf, whereIs } from './scene.ts';

/** 9. Loudness, and 10. touch. */

const thumb: Situation = {
  name: 'thumb-loud',
  takesSecond: true,
  tell: (scene) => {
    const figure = scene.measured.measures.thumbAccentDb;
    if (!surelyOver(figure, scene.criteria.thumbAccentDb, scene.criteria)) return null;
    const db = valueOf(figure)!.toFixed(1);
    const steps = scene.exercise.steps.filter((step) => step.notes.some((note) => note.finger === 1));
    return {
      sentence: `The thumb knocks: ${db} dB louder than its neighbours`,
      half: `the thumb is ${db} dB louder than its neighbours`,
      emphasis: 'The thumb knocks',
      nextStep: 'a lighter thumb, with the wrist level.',
      steps: steps.map((step) => step.step),
    };
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
    const where = found === 'topDb' ? 'top' : 'end';
    const db = Math.round(-valueOf(ends[found])!);
    const last = scene.exercise.steps.length - 1;
    const turn = scene.exercise.steps.find((step) => step.turn)?.step;
    return {
      sentence: `The ${where} fades, by ${db} dB`,
      half: `the ${where} fades`,
      emphasis: `The ${where} fades`,
      nextStep: `keep the weight of the arm in the keys to the ${found === 'topDb' ? 'top note' : 'last note'}.`,
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
      const what = `${sayFingerOf(scene, { hand, finger: soft.finger })} is ${Math.round(size.value)} dB softer than the fingers beside it`;
      return {
        sentence: `In the chords ${what}`,
        half: what,
        emphasis: what,
        nextStep: 'press the shape silently first, all keys touched; then strike them together.',
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
    const nextStep = 'hold each key until the next one sounds.';
    if (surelyOver(gap, detachedMs, scene.criteria)) {
      const ms = Math.round(valueOf(gap)!);
      const what = `gaps of ${ms} ms`;
      return {
        sentence: `The notes are detached, with ${what} between them`,
        half: 'the notes are detached',
        emphasis: 'detached',
        nextStep,
        steps: [],
      };
    }
    // A gap that is there only because the next note came late is told as that.
    const lateMs = new Map(measures.intervals.map((one) => [one.step, Math.max(0, one.deviationMs)]));
    if (!isMeasured(measures.touchMs)) return null;
    const usualMs = measures.touchMs.value;
    const scatterMs = 1.4826 * (median(joins.map((join) => Math.abs(join.overlapMs - usualMs))) ?? 0);
    const boundMs = Math.max(scene.criteria.gapMs, scene.criteria.gapScatters * scatterMs - usualMs);
    const open = joins.filter((join) => join.overlapMs + (lateMs.get(join.step) ?? 0) < -boundMs);
    if (open.length === 0 || open.length > joins.length / 3) return null;
    const widest = open.reduce((a, b) => (b.overlapMs < a.overlapMs ? b : a));
    const into = say(scene.exercise.steps[widest.step]!.notes.at(-1)!);
    const from = say(scene.exercise.steps[widest.step - 1]!.notes.at(-1)!);
    const what = `between ${from} and ${into} ${whereIs(scene, widest.step - 1)}`.trim();
    return {
      sentence: `Detached ${what}; the rest is connected`,
      emphasis: what,
      nextStep,
      steps: [widest.step - 1, widest.step],
    };
  },
};

export const LOUDNESS: readonly Situation[] = [innerSoft, thumb, fading];
export const TOUCH: readonly Situation[] = [detached];
