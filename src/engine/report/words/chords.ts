import type { ExpectedNote } from '../../exercise/index.ts';
import type { FindingKind } from '../../listen/index.ts';
import type { Notice } from '../../notices/index.ts';
import { chordSpreadMs, isMeasured, shareOver, surelyOver, valueOf } from '../measures/index.ts';
import { chordAt, practiceAround, taskOf } from './place.ts';
import type { Advice, Saying } from './said/index.ts';
import type { Scene, Situation, Situations } from './scene.ts';
import { handIfBoth, isChordForm, isSameVoice } from './scene.ts';
import { timesBefore, turnAbout } from './variety.ts';

/** Hesitation at a change of chord, chords not struck as one, inner notes that hardly sound. */

const SLOWER = 0.75;

const change: Situation = (scene) => {
  const { measures, slowestChange } = scene.measured;
  const { changeHesitationRatio: figure } = measures;
  const { changeRatio } = scene.criteria;
  // A passage is no row of chords: a late one is told as a late note.
  if (scene.exercise.choice.passage !== undefined) return null;
  if (slowestChange === undefined || !surelyOver(figure, changeRatio, scene.criteria)) return null;
  const { step, ratio } = slowestChange;
  const practice = practiceAround(scene, step - 1, step, SLOWER);
  return {
    statement: {
      situation: 'change-hesitates',
      steps: [step],
      faults: 1,
      sure: shareOver(figure, changeRatio),
      to: chordAt(scene, step),
      ratio,
    },
    gravity: ratio / changeRatio,
    advice: turnAbout<Advice>(timesBefore(scene, 'change-hesitates'), [
      { step: 'next-shape', task: taskOf(scene, practice) },
      { step: 'shape-silently', task: taskOf(scene, practice) },
    ]),
    practice,
  };
};

type Voice = NonNullable<Saying<'chords-spread'>['last']>;

/** Which note of its hand's chord it is. */
function voiceOf(scene: Scene, step: number, note: ExpectedNote): Voice {
  const chord = scene.exercise.steps[step]!.notes.filter(({ hand }) => hand === note.hand);
  if (isSameVoice(chord[0]!, note)) return 'lowest';
  return isSameVoice(chord.at(-1)!, note) ? 'highest' : 'inner';
}

const spread: Situation = (scene) => {
  const { criteria } = scene;
  const [worse] = scene.measured.byHand
    .map(({ hand }) => scene.measured.spreads.filter((chord) => chord.last.expected.hand === hand))
    .map((spreads) => ({ spreads, figure: chordSpreadMs(spreads) }))
    .filter(({ figure }) => surelyOver(figure, criteria.chordSpreadMs, criteria))
    .sort((a, b) => valueOf(b.figure)! - valueOf(a.figure)!);
  if (worse === undefined || !isMeasured(worse.figure)) return null;
  const wide = worse.spreads.filter((chord) => chord.spreadMs > criteria.chordSpreadMs);
  const voices = wide.map((chord) => voiceOf(scene, chord.step, chord.last.expected));
  const share = (one: Voice): number => voices.filter((voice) => voice === one).length / voices.length;
  const last = voices.find((one) => share(one) >= criteria.sameFingerShare) ?? null;
  const hand = handIfBoth(scene, worse.spreads[0]!.last.expected.hand);
  const widest = [...wide].sort((a, b) => b.spreadMs - a.spreadMs)[0]!.step;
  const practice = practiceAround(scene, widest - 1, widest + 1, SLOWER);
  const task = taskOf(scene, practice, hand);
  return {
    statement: {
      situation: 'chords-spread',
      steps: wide.map((chord) => chord.step),
      faults: 1,
      sure: shareOver(worse.figure, criteria.chordSpreadMs),
      spreadMs: Math.round(worse.figure.value),
      last,
      hand,
    },
    gravity: worse.figure.value / criteria.chordSpreadMs,
    advice: turnAbout<Advice>(timesBefore(scene, 'chords-spread'), [
      { step: 'fall-as-one', task, last },
      { step: 'shape-silently', task },
    ]),
    practice,
  };
};

/**
 * How much the inner notes of a chord may seem softer by the piano alone, one standard deviation, dB: a key differs from its
 * neighbours by some 2.5 dB and arrives 1.5 dB otherwise by the room (development piano), three of them in one chord; over the few
 * different keys of an exercise half of it is left.
 */
const PIANO_DB = 1.8;

/** An inner note that the closer look cannot make out, in at least half of the chords and in so many, is no chance. */
const HARDLY_SHARE = 0.5;
const HARDLY_CHORDS = 3;
/** In such sound a soft note is hidden by something else. Common practice, no source. */
const HIDING: readonly FindingKind[] = ['too-quiet', 'noise', 'speech', 'hum', 'processing'];

/**
 * Chords of three whose outer notes are plainly heard and an inner one is not. Of 1749 notes of chords that were struck alike the closer
 * look left none unsure (test piano), so that several are no error of the ear: they are hardly struck, or not.
 */
function chordsWithout({ alignment: { matched }, exercise }: Scene): readonly number[] {
  return exercise.steps.flatMap(({ step, notes }) =>
    (['left', 'right'] as const)
      .map((hand) => notes.filter((note) => note.hand === hand))
      .filter((chord) => chord.length > 2)
      .filter((chord) => {
        const [lowest, ...others] = chord.map((note) =>
          matched.find((one) => one.step === step && one.expected === note),
        );
        const highest = others.pop();
        return (
          lowest?.verdict === 'correct' &&
          highest?.verdict === 'correct' &&
          others.some((inner) => inner?.verdict === 'unsure' && isTooFaint(inner.reason))
        );
      })
      .map(() => step),
  );
}

const isTooFaint = ({ notice }: Notice): boolean => notice === 'too-faint' || notice === 'not-certain';

/** How much softer the inner notes are, as far as it is sure that they are too soft. */
function innerSofter(
  scene: Scene,
): { gravity: number; sure: number; softerDb: number | null; steps: readonly number[] } | null {
  const {
    measured: { measures },
    criteria,
    heard,
    exercise,
  } = scene;
  const bound = criteria.innerSofterDb;
  const without = chordsWithout(scene);
  const hardly = without.length >= Math.max(HARDLY_CHORDS, HARDLY_SHARE * exercise.steps.length);
  if (hardly && !heard.findings.some(({ kind }) => HIDING.includes(kind)))
    return { sure: 1, softerDb: null, steps: without, gravity: without.length / HARDLY_CHORDS };
  const figure = measures.innerBalanceDb;
  if (!isMeasured(figure)) return null;
  const ofPiano = measures.keysKnown === true ? 0 : PIANO_DB;
  const softer = { value: -figure.value, plusMinus: Math.hypot(figure.plusMinus ?? 0, ofPiano) };
  if (!surelyOver(softer, bound, criteria)) return null;
  return { sure: shareOver(softer, bound), softerDb: softer.value, steps: [], gravity: softer.value / bound };
}

const innerSoft: Situation = (scene) => {
  const found = isChordForm(scene.exercise) ? innerSofter(scene) : null;
  if (found === null) return null;
  const { gravity, ...soft } = found;
  const practice = practiceAround(scene, 0, 2, SLOWER);
  const task = taskOf(scene, practice);
  return {
    statement: { situation: 'inner-notes-soft', faults: 1, ...soft },
    gravity,
    advice: turnAbout<Advice>(timesBefore(scene, 'inner-notes-soft'), [
      { step: 'shape-silently', task },
      { step: 'fall-as-one', task, last: 'inner' },
    ]),
    practice,
  };
};

export const CHANGES: Situations = { 'change-hesitates': change };
export const SPREAD: Situations = { 'chords-spread': spread };
export const INNER: Situations = { 'inner-notes-soft': innerSoft };
