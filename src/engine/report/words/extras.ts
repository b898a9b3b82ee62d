import type { ExpectedNote } from '../../exercise/index.ts';
import { sureOfExtra } from '../criteria/evidence.ts';
import { inOctaves } from './octaves.ts';
import { placeOf, practiceAround, spotOf, taskOf } from './place.ts';
import type { Advice } from './said/index.ts';
import type { Scene, Situation, Situations } from './scene.ts';
import { isChordForm, nameOf } from './scene.ts';
import { spellPlayed } from './spelling.ts';
import { timesBefore, turnAbout } from './variety.ts';

/** Extra keys: caught with a right one, struck twice, or neither. */

const SLOWLY = 0.6;
/** A key too many spoils less than a note that is not there. */
const WEIGHT = 0.5;

const slips: Situation = (scene) => {
  const extras = scene.alignment.extras.filter(({ kind }) => kind === 'slip' || kind === 'other');
  const [first] = extras;
  if (first === undefined) return null;
  const midis = extras.map(({ played }) => scene.heard.notes[played]!.midi + scene.alignment.semitoneShift);
  const keys = extras.map(({ step, kind }, at) => {
    const midi = midis[at]!;
    const beside = nearest(scene, step, midi);
    return {
      step,
      struck: spellPlayed(scene.exercise, step, midi, beside),
      caughtWith: kind === 'slip' ? nameOf(beside) : null,
      place: placeOf(scene, step),
    };
  });
  const practice = practiceAround(scene, first.step - 2, first.step + 2, SLOWLY);
  const task = taskOf(scene, practice);
  const again: Advice = isChordForm(scene.exercise)
    ? { step: 'shape-silently', task }
    : { step: 'one-note-more', task };
  return {
    statement: {
      situation: 'slips',
      steps: [...new Set(extras.map((extra) => extra.step))],
      faults: extras.length,
      sure: Math.min(...extras.map((extra) => sureOfExtra(scene.heard, extra))),
      keys: inOctaves(keys, midis),
    },
    gravity: WEIGHT * extras.length,
    advice: turnAbout<Advice>(timesBefore(scene, 'slips'), [
      { step: first.kind === 'slip' ? 'middle-of-the-key' : 'these-keys-only', task },
      again,
    ]),
    practice,
  };
};

/** The step's expected note that lies nearest to a key. */
function nearest(scene: Scene, step: number, midi: number): ExpectedNote {
  const notes = scene.alignment.matched.filter((note) => note.step === step).map((note) => note.expected);
  return notes.reduce((a, b) => (Math.abs(b.midi - midi) < Math.abs(a.midi - midi) ? b : a));
}

const repeats: Situation = (scene) => {
  const again = scene.alignment.extras.filter(({ kind }) => kind === 'repeat');
  const steps = [...new Set(again.map((extra) => extra.step))];
  const [first] = steps;
  if (first === undefined) return null;
  const struck = steps.map((step) => {
    const { played } = again.find((extra) => extra.step === step)!;
    return nearest(scene, step, scene.heard.notes[played]!.midi + scene.alignment.semitoneShift);
  });
  const spots = inOctaves(
    steps.map((step, at) => ({ ...spotOf(scene, step), note: nameOf(struck[at]!) })),
    struck.map(({ midi }) => midi),
  );
  const practice = practiceAround(scene, first - 2, first + 2, SLOWLY);
  return {
    statement: {
      situation: 'repeats',
      steps,
      faults: steps.length,
      sure: Math.min(...again.map((extra) => sureOfExtra(scene.heard, extra))),
      spots: steps.map((step, at) => ({ step, spot: spots[at]! })),
    },
    gravity: WEIGHT * steps.length,
    advice: turnAbout<Advice>(timesBefore(scene, 'repeats'), [
      { step: 'go-on', task: taskOf(scene, practice) },
      { step: 'slower-with-the-pulse', task: taskOf(scene, practice) },
    ]),
    practice,
  };
};

export const EXTRAS: Situations = { slips, repeats };
