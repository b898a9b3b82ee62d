import type { ExerciseChoice } from '../../exercise/index.ts';
import { sayPlayed } from './played.ts';
import type { Scene, Situation } from './scene.ts';
import { say, sayKey } from './scene.ts';
import type { Difference } from './types.ts';

const LEAST_RIGHT = 3;
const LEAST_SHARE = 0.35;

/** 1. Nothing or too little heard, or sound not usable: what to change. */
const tooLittle: Situation = {
  name: 'too-little',
  takesSecond: false,
  tell: (scene) => {
    const { matched } = scene.alignment;
    const right = matched.filter((note) => note.verdict === 'correct').length;
    if (right >= LEAST_RIGHT && right >= LEAST_SHARE * matched.length) return null;
    if (scene.alignment.betterFit !== undefined) return null;
    const trouble = scene.heard.findings.find((finding) => finding.kind !== 'channels');
    const heardMuch = scene.report.notes.length >= matched.length / 2;
    const finding = trouble?.detail ?? null;
    return { ...scene.wording.tooLittle({ right, of: matched.length, heardMuch, finding }), steps: [] };
  },
};

/** 2. Another exercise, key or hand than chosen: which it sounded like; offer to switch. */
const otherExercise: Situation = {
  name: 'other-exercise',
  takesSecond: false,
  tell: (scene) => {
    const { chosen, betterFit } = scene.alignment;
    if (chosen !== undefined) {
      const difference = differenceOf(scene, chosen, scene.exercise.choice);
      return { ...scene.wording.otherMeasured(difference), steps: [] };
    }
    const better = betterFit?.choice;
    if (better === undefined || (better.hands !== 'together' && bothHandsFound(scene))) return null;
    const difference = differenceOf(scene, scene.exercise.choice, better);
    return { ...scene.wording.otherExercise(difference, otherModeNote(scene, better)), steps: [] };
  },
};

/** Of one hand's notes so many may be right by chance, or by an overtone of the other hand's, and it did not play. */
const MOST_OF_NO_HAND = 0.25;

/** Notes of both hands were found: what was played was not one hand alone. */
function bothHandsFound({ alignment, exercise }: Scene): boolean {
  if (exercise.choice.hands !== 'together') return false;
  return (['left', 'right'] as const).every((hand) => {
    const own = alignment.matched.filter(({ expected }) => expected.hand === hand);
    const right = own.filter(({ verdict }) => verdict === 'correct').length;
    return right > MOST_OF_NO_HAND * own.length;
  });
}

/** What the two choices differ in, most telling first. */
function differenceOf(scene: Scene, chosen: ExerciseChoice, better: ExerciseChoice): Difference {
  if (better.form !== chosen.form) {
    const ofKey = better.key === chosen.key ? null : sayKey(scene, better.key);
    return { kind: 'form', like: better.form, ofKey, not: chosen.form };
  }
  if (better.key !== chosen.key)
    return { kind: 'key', like: sayKey(scene, better.key), not: sayKey(scene, chosen.key) };
  if (better.hands === 'together' && chosen.hands !== 'together')
    return { kind: 'both-hands', notHand: chosen.hands };
  if (chosen.hands === 'together' && better.hands !== 'together') return { kind: 'one-hand' };
  if (better.octaves !== chosen.octaves)
    return { kind: 'octaves', like: better.octaves, not: chosen.octaves };
  return { kind: 'minor-scale', like: better.minorScale ?? '', not: chosen.minorScale ?? '' };
}

/** Where only the mode differs, the note that made the difference: G natural for G♯, each time. */
function otherModeNote(
  scene: Scene,
  better: ExerciseChoice,
): { readonly struck: string; readonly wanted: string; readonly often: 'once' | 'both' | 'each' } | null {
  const { choice } = scene.exercise;
  if (better.form !== choice.form || better.key.split(' ')[0] !== choice.key.split(' ')[0]) return null;
  if (better.key === choice.key) return null;
  const wrong = scene.alignment.matched.find((note) => note.verdict === 'wrong');
  if (wrong?.verdict !== 'wrong') return null;
  const wanted = say(scene, wrong.expected);
  const alike = scene.alignment.matched.filter((note) => say(scene, note.expected) === wanted);
  const each = alike.every((note) => note.verdict === 'wrong') && alike.length > 1;
  const midi = scene.heard.notes[wrong.played]!.midi + scene.alignment.semitoneShift;
  return {
    struck: sayPlayed(scene, midi, wrong.expected),
    wanted,
    often: !each ? 'once' : alike.length === 2 ? 'both' : 'each',
  };
}

export const USABLE: readonly Situation[] = [tooLittle, otherExercise];
