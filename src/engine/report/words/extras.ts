import type { ExpectedNote } from '../../exercise/index.ts';
import type { Situation, Scene } from './scene.ts';
import { handWords, isChordForm, practiceAround, say, sayStretch, whereIs } from './scene.ts';
import { inWords, sayPlayed, sentenceCase } from './spelling.ts';

/** Extra keys: caught with a right one, struck twice, or neither. */
const slips: Situation = {
  name: 'slips',
  takesSecond: true,
  tell: (scene) => {
    const extras = scene.alignment.extras.filter(({ kind }) => kind === 'slip' || kind === 'other');
    if (extras.length === 0) return null;
    const first = extras[0]!;
    const midi = scene.heard.notes[first.played]!.midi + scene.alignment.semitoneShift;
    const beside = nearest(scene, first.step, midi);
    const name = sayPlayed(scene.exercise.choice.key, midi, beside);
    const where = whereIs(scene, first.step);
    const what =
      first.kind === 'slip'
        ? `${name} caught with ${say(beside)} ${where}`.trim()
        : `an extra ${name} ${where}`.trim();
    const head =
      extras.length === 1
        ? sentenceCase(what)
        : `${sentenceCase(inWords(extras.length))} keys too many, the first ${what}`;
    const practice = practiceAround(scene, first.step - 2, first.step + 2, 0.6);
    return {
      sentence: head,
      half: extras.length === 1 ? what : `${inWords(extras.length)} keys too many`,
      emphasis: extras.length === 1 ? sentenceCase(what) : what,
      nextStep: `${handWords(scene.exercise)}, only ${sayStretch(scene, practice.fromStep, practice.toStep)}, at ${practice.tempoBpm}, ${first.kind === 'slip' ? 'each finger over the middle of its key' : 'these keys and no other'}.`,
      steps: extras.map((extra) => extra.step),
      practice,
    };
  },
};

/** The step's expected note that lies nearest to a key. */
function nearest(scene: Scene, step: number, midi: number): ExpectedNote {
  const notes = scene.alignment.matched.filter((note) => note.step === step).map((note) => note.expected);
  return notes.reduce((a, b) => (Math.abs(b.midi - midi) < Math.abs(a.midi - midi) ? b : a));
}

const repeats: Situation = {
  name: 'repeats',
  takesSecond: true,
  tell: (scene) => {
    const again = scene.alignment.extras.filter(({ kind }) => kind === 'repeat');
    if (again.length === 0) return null;
    const first = again[0]!;
    const steps = [...new Set(again.map((extra) => extra.step))];
    const name = isChordForm(scene.exercise)
      ? `the chord ${whereIs(scene, first.step)}`.replace('the chord in the', 'the')
      : say(nearest(scene, first.step, scene.heard.notes[first.played]!.midi));
    const where = isChordForm(scene.exercise) ? '' : ` ${whereIs(scene, first.step)}`;
    const what = `${name} is struck twice${where}`;
    const more =
      steps.length > 1
        ? `, and ${steps.length === 2 ? 'one more' : `${inWords(steps.length - 1)} more`}`
        : '';
    const practice = practiceAround(scene, first.step - 2, first.step + 2, 0.6);
    return {
      sentence: sentenceCase(what) + more,
      half: what,
      emphasis: sentenceCase(what),
      nextStep: `only ${sayStretch(scene, practice.fromStep, practice.toStep)}, at ${practice.tempoBpm}; whatever happens, go on to the next note.`,
      steps,
      practice,
    };
  },
};

export const EXTRAS: readonly Situation[] = [slips, repeats];
