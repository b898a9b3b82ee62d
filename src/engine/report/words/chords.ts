import { chordSpreadMs } from '../measures/index.ts';
import type { Situation } from './scene.ts';
import { chordAt, fingerOf, practiceAround, surelyOver, valueOf } from './scene.ts';
import type { FingerOf } from './types.ts';

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
    const { criteria } = scene;
    const hands = scene.measured.byHand
      .map(({ hand }) => scene.measured.spreads.filter((chord) => chord.last.expected.hand === hand))
      .map((spreads) => ({ spreads, figure: chordSpreadMs(spreads) }))
      .filter(({ figure }) => surelyOver(figure, criteria.chordSpreadMs, criteria))
      .sort((a, b) => valueOf(b.figure)! - valueOf(a.figure)!);
    const [worse] = hands;
    if (worse === undefined) return null;
    const wide = hands
      .flatMap(({ spreads }) => spreads)
      .filter((chord) => chord.spreadMs > criteria.chordSpreadMs);
    const last = wide.map((chord) => fingerOf(scene, chord.last.expected));
    const share = (one: FingerOf): number =>
      last.filter(({ finger, hand }) => finger === one.finger && hand === one.hand).length / last.length;
    const mostly = last.find((one) => share(one) >= criteria.sameFingerShare) ?? null;
    return {
      ...scene.wording.chordsSpread(Math.round(valueOf(worse.figure)!), mostly),
      steps: wide.map((chord) => chord.step),
    };
  },
};

export const CHANGES: readonly Situation[] = [change];
export const SPREAD: readonly Situation[] = [spread];
