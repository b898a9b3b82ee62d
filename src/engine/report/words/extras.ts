import type { ExpectedNote } from '../../exercise/index.ts';
import { sayPlayed } from './played.ts';
import type { Situation, Scene } from './scene.ts';
import { placeOf, practiceAround, say, taskOf } from './scene.ts';

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
    const practice = practiceAround(scene, first.step - 2, first.step + 2, 0.6);
    const given = {
      struck: sayPlayed(scene, midi, beside),
      caughtWith: first.kind === 'slip' ? say(scene, beside) : null,
      place: placeOf(scene, first.step),
    };
    return {
      ...scene.wording.slips(given, extras.length, taskOf(scene, practice)),
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
    const note = say(scene, nearest(scene, first.step, scene.heard.notes[first.played]!.midi));
    const practice = practiceAround(scene, first.step - 2, first.step + 2, 0.6);
    const place = placeOf(scene, first.step);
    return {
      ...scene.wording.repeats(note, place, steps.length, taskOf(scene, practice)),
      steps,
      practice,
    };
  },
};

export const EXTRAS: readonly Situation[] = [slips, repeats];
