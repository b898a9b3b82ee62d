import { ALL_MINOR_SCALES, buildExercise } from '../../exercise/index.ts';
import type { ExerciseChoice, MinorScale } from '../../exercise/index.ts';
import { faultsOf } from './faults.ts';
import type { Difference, Saying } from './said/index.ts';
import type { Scene, Situation, Situations } from './scene.ts';
import { nameOf } from './scene.ts';
import { spellPlayed } from './spelling.ts';

const LEAST_RIGHT = 3;
const LEAST_SHARE = 0.35;

/** Nothing or too little heard, or sound not usable: what to change. */
const tooLittle: Situation = (scene) => {
  const { matched } = scene.alignment;
  const right = matched.filter((note) => note.verdict === 'correct').length;
  if (right >= LEAST_RIGHT && right >= LEAST_SHARE * matched.length) return null;
  if (scene.alignment.betterFit !== undefined) return null;
  const finding = scene.heard.findings.find(({ kind }) => kind !== 'channels')?.notice ?? null;
  const heardMuch = scene.report.notes.length >= matched.length / 2;
  return {
    statement: {
      situation: 'too-little',
      steps: [],
      faults: 0,
      right,
      of: matched.length,
      heardMuch,
      finding,
    },
    advice: heardMuch ? { step: 'check-the-choice' } : { step: 'record-again', finding },
  };
};

/** Another exercise or key than chosen: which it sounded like; offer to switch. Never the hand alone: it is not heard. */
const otherExercise: Situation = (scene) => {
  // What was to be practised was said: nothing else is looked for.
  if (scene.exercise.practised !== undefined) return null;
  const { chosen } = scene.alignment;
  const { choice } = scene.exercise;
  const better = scene.alignment.betterFit?.choice;
  const difference =
    chosen !== undefined
      ? differenceOf(scene, chosen, choice)
      : better === undefined
        ? otherMinorScale(scene)
        : differenceOf(scene, choice, better);
  if (difference === null) return null;
  const measured = chosen !== undefined;
  const note = better === undefined || measured ? null : otherModeNote(scene, better);
  return {
    statement: { situation: 'other-exercise', steps: [], faults: 0, difference, note, measured },
    advice: { step: measured ? 'go-on-or-the-other' : 'switch-or-again' },
  };
};

/** What the two choices differ in, most telling first; null: in nothing that can be heard. */
function differenceOf(scene: Scene, chosen: ExerciseChoice, better: ExerciseChoice): Difference | null {
  if (better.form !== chosen.form)
    return {
      kind: 'form',
      like: better.form,
      ofKey: better.key === chosen.key ? null : better.key,
      not: chosen.form,
    };
  if (better.key !== chosen.key) return { kind: 'key', like: better.key, not: chosen.key };
  if (better.hands === 'together' && chosen.hands !== 'together')
    return { kind: 'both-hands', notHand: scene.handKnown ? chosen.hands : null };
  if (chosen.hands === 'together' && better.hands !== 'together')
    return bothHandsFound(scene) ? null : { kind: 'one-hand' };
  if (better.octaves !== chosen.octaves)
    return { kind: 'octaves', like: better.octaves, not: chosen.octaves };
  if (better.minorScale === chosen.minorScale) return null;
  return { kind: 'minor-scale', like: better.minorScale ?? 'harmonic', not: chosen.minorScale ?? 'harmonic' };
}

/** Of one hand's notes so many may be right by chance, or by an overtone of the other hand's, and it did not play. */
const MOST_OF_NO_HAND = 0.25;

/** Notes of both hands were found: what was played was not one hand alone. */
function bothHandsFound({ alignment }: Scene): boolean {
  return (['left', 'right'] as const).every((hand) => {
    const own = alignment.matched.filter(({ expected }) => expected.hand === hand);
    const right = own.filter(({ verdict }) => verdict === 'correct').length;
    return right > MOST_OF_NO_HAND * own.length;
  });
}

/** Another minor scale of the key, where it explains every wrong note, and every note in which the two differ was played so. */
function otherMinorScale(scene: Scene): Difference | null {
  const { choice } = scene.exercise;
  const faults = faultsOf(scene);
  if (choice.form !== 'scale' || scene.facts.mode !== 'minor' || faults.length < 2) return null;
  const not: MinorScale = choice.minorScale ?? 'harmonic';
  const like = ALL_MINOR_SCALES.find((minorScale) => {
    if (minorScale === not) return false;
    const other = buildExercise({ ...choice, minorScale }).steps;
    const differing = scene.alignment.matched.filter(
      ({ step, expected }) => !other[step]!.notes.some((note) => sameKey(note.midi, expected.midi)),
    );
    return (
      differing.length === faults.length &&
      faults.every(({ step, playedMidi }) =>
        other[step]!.notes.some((note) => playedMidi !== null && sameKey(note.midi, playedMidi)),
      )
    );
  });
  return like === undefined ? null : { kind: 'minor-scale', like, not };
}

const sameKey = (midi: number, other: number): boolean => (midi - other) % 12 === 0;

/** Where only the mode differs, the note that made the difference: G natural for G♯, each time. */
function otherModeNote(scene: Scene, better: ExerciseChoice): Saying<'other-exercise'>['note'] {
  const { choice } = scene.exercise;
  if (better.form !== choice.form || better.key.split(' ')[0] !== choice.key.split(' ')[0]) return null;
  if (better.key === choice.key) return null;
  const wrong = scene.alignment.matched.find((note) => note.verdict === 'wrong');
  if (wrong?.verdict !== 'wrong') return null;
  const wanted = nameOf(wrong.expected);
  const alike = scene.alignment.matched.filter((note) => nameOf(note.expected) === wanted);
  const each = alike.every((note) => note.verdict === 'wrong') && alike.length > 1;
  const midi = scene.heard.notes[wrong.played]!.midi + scene.alignment.semitoneShift;
  return {
    struck: spellPlayed(scene.exercise, wrong.step, midi, wrong.expected),
    wanted,
    often: !each ? 'once' : alike.length === 2 ? 'both' : 'each',
  };
}

/** Part of the sound was lost on the way. */
const soundLost: Situation = ({ soundLostSec }) =>
  soundLostSec === 0
    ? null
    : {
        statement: { situation: 'sound-lost', steps: [], faults: 0, lostSec: soundLostSec },
        advice: { step: 'the-same-again', inARow: null },
      };

export const LOST: Situations = { 'sound-lost': soundLost };
export const USABLE: Situations = { 'too-little': tooLittle, 'other-exercise': otherExercise };
