import type { Situation } from './scene.ts';
import { chordAt, practiceAround, surelyOver, valueOf } from './scene.ts';

/** 6. Hesitation at a change of chord, and 8. chords not struck as one. */

const change: Situation = {
  name: 'change-hesitates',
  takesSecond: true,
  tell: (scene) => {
    const { measures, slowestChange } = scene.measured;
    if (slowestChange === undefined) return null;
    if (!surelyOver(measures.changeHesitationRatio, scene.criteria.changeRatio, scene.criteria)) return null;
    const { step, ratio } = slowestChange;
    return {
      ...scene.wording.changeHesitates(chordAt(scene, step), ratio),
      steps: [step],
      practice: practiceAround(scene, step - 1, step, 0.75),
    };
  },
};

const spread: Situation = {
  name: 'chords-spread',
  takesSecond: true,
  tell: (scene) => {
    const { measures, spreads } = scene.measured;
    const { criteria } = scene;
    if (!surelyOver(measures.chordSpreadMs, criteria.chordSpreadMs, criteria)) return null;
    const wide = spreads.filter((chord) => chord.spreadMs > criteria.chordSpreadMs);
    const fingers = [...new Set(wide.map((chord) => chord.last.expected.finger))];
    const share = (finger: number): number =>
      wide.filter((chord) => chord.last.expected.finger === finger).length / wide.length;
    const lastFinger = fingers.find((finger) => share(finger) >= criteria.sameFingerShare);
    const ms = Math.round(valueOf(measures.chordSpreadMs)!);
    return {
      ...scene.wording.chordsSpread(ms, lastFinger ?? null),
      steps: wide.map((chord) => chord.step),
    };
  },
};

export const CHANGES: readonly Situation[] = [change];
export const SPREAD: readonly Situation[] = [spread];
