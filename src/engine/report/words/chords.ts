import { chordSpreadMs } from '../measures/index.ts';
import type { Situation } from './scene.ts';
import { chordName, practiceAround, sayFingerOf, surelyOver, valueOf } from './scene.ts';

/** 6. Hesitation at a change of chord, and 8. chords not struck as one. */

const change: Situation = {
  name: 'change-hesitates',
  takesSecond: true,
  tell: (scene) => {
    const { measures, slowestChange } = scene.measured;
    if (slowestChange === undefined) return null;
    if (!surelyOver(measures.changeHesitationRatio, scene.criteria.changeRatio, scene.criteria)) return null;
    const { step, ratio } = slowestChange;
    const what = `to the ${chordName(scene, step)}`;
    return {
      sentence: `The change ${what} takes ${ratio.toFixed(1)} times as long as the others`,
      half: `the change ${what} hesitates`,
      emphasis: what,
      nextStep: 'hold the chord, look at the next shape, then move as one, with no sound between.',
      steps: [step],
      practice: practiceAround(scene, step - 1, step, 0.75),
    };
  },
};

const spread: Situation = {
  name: 'chords-spread',
  takesSecond: true,
  tell: (scene) => {
    const { criteria, heard } = scene;
    const hands = scene.measured.byHand
      .map(({ hand }) => scene.measured.spreads.filter((chord) => chord.last.expected.hand === hand))
      .map((spreads) => ({ spreads, figure: chordSpreadMs(spreads, heard.onsetSdMs) }))
      .filter(({ figure }) => surelyOver(figure, criteria.chordSpreadMs, criteria))
      .sort((a, b) => valueOf(b.figure)! - valueOf(a.figure)!);
    const [worse] = hands;
    if (worse === undefined) return null;
    const wide = hands
      .flatMap(({ spreads }) => spreads)
      .filter((chord) => chord.spreadMs > criteria.chordSpreadMs);
    const names = wide.map((chord) => sayFingerOf(scene, chord.last.expected));
    const share = (finger: string): number => names.filter((name) => name === finger).length / names.length;
    const lastFinger = names.find((finger) => share(finger) >= criteria.sameFingerShare);
    const ms = Math.round(valueOf(worse.figure)!);
    const tail = lastFinger === undefined ? '' : `, ${lastFinger} last`;
    return {
      sentence: `The chords are not struck as one: ${ms} ms from first note to last${tail}`,
      half: 'the chords are not struck as one',
      emphasis: 'not struck as one',
      nextStep:
        lastFinger === undefined
          ? 'touch all the keys before you press, then let the arm fall into them at once.'
          : `touch all the keys before you press, and put the arm's weight into ${lastFinger}.`,
      steps: wide.map((chord) => chord.step),
    };
  },
};

export const CHANGES: readonly Situation[] = [change];
export const SPREAD: readonly Situation[] = [spread];
