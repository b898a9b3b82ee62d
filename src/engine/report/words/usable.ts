import type { ExerciseChoice } from '../../exercise/index.ts';
import { inWords, sayPlayed } from './spelling.ts';
import type { Scene, Situation } from './scene.ts';
import { say, sayKey } from './scene.ts';

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
    const count = `${right} of ${matched.length} notes`;
    const sentence = heardMuch
      ? `This does not sound like the exercise chosen: only ${count} fit`
      : `Too little was heard to judge: ${count}`;
    const nextStep = heardMuch
      ? 'check the key and the exercise, then play it again.'
      : (trouble?.detail ?? 'play it again with the device one to two metres from the piano.');
    return { sentence, emphasis: count, nextStep, steps: [] };
  },
};

/** 2. Another exercise, key or hand than chosen: which it sounded like; offer to switch. */
const otherExercise: Situation = {
  name: 'other-exercise',
  takesSecond: false,
  tell: (scene) => {
    const better = scene.alignment.betterFit?.choice;
    if (better === undefined) return null;
    const { like, not } = difference(better, scene.exercise.choice);
    const notes = otherModeNotes(scene, better);
    const sentence = `This sounded like ${like}${not === '' ? '' : `, not ${not}`}${notes}`;
    return {
      sentence,
      emphasis: like,
      nextStep: 'switch to it if that is what you meant, or play the exercise chosen once more.',
      steps: [],
    };
  },
};

/** What the two choices differ in, most telling first. */
function difference(better: ExerciseChoice, chosen: ExerciseChoice): { like: string; not: string } {
  if (better.form !== chosen.form) {
    const key = better.key === chosen.key ? '' : ` of ${sayKey(better.key)}`;
    return { like: `the ${FORM_WORDS[better.form]}${key}`, not: `the ${FORM_WORDS[chosen.form]}` };
  }
  if (better.key !== chosen.key) return { like: sayKey(better.key), not: sayKey(chosen.key) };
  if (better.hands === 'together' && chosen.hands !== 'together')
    return { like: 'both hands', not: `the ${chosen.hands} hand alone` };
  if (chosen.hands === 'together' && better.hands !== 'together')
    return { like: 'one hand alone', not: 'both together' };
  if (better.octaves !== chosen.octaves)
    return { like: octaveWords(better.octaves), not: inWords(chosen.octaves) };
  return { like: `the ${better.minorScale ?? ''} scale`, not: `the ${chosen.minorScale ?? ''} one` };
}

const FORM_WORDS: Readonly<Record<ExerciseChoice['form'], string>> = {
  arpeggio: 'arpeggio',
  triads: 'solid triads',
  'broken-triads': 'broken triads',
  progression: 'chord progression',
  scale: 'scale',
};

function octaveWords(octaves: number): string {
  return `${inWords(octaves)} octave${octaves === 1 ? '' : 's'}`;
}

/** Where only the mode differs, the note that made the difference: ": G natural for G♯ each time". */
function otherModeNotes(scene: Scene, better: ExerciseChoice): string {
  const { choice } = scene.exercise;
  if (better.form !== choice.form || better.key.split(' ')[0] !== choice.key.split(' ')[0]) return '';
  if (better.key === choice.key) return '';
  const wrong = scene.alignment.matched.find((note) => note.verdict === 'wrong');
  if (wrong?.verdict !== 'wrong') return '';
  const alike = scene.alignment.matched.filter((note) => say(note.expected) === say(wrong.expected));
  const each = alike.every((note) => note.verdict === 'wrong');
  const times = each && alike.length > 1 ? (alike.length === 2 ? ' both times' : ' each time') : '';
  const midi = scene.heard.notes[wrong.played]!.midi + scene.alignment.semitoneShift;
  return `: ${sayPlayed(choice.key, midi, wrong.expected)} for ${say(wrong.expected)}${times}`;
}

export const USABLE: readonly Situation[] = [tooLittle, otherExercise];
