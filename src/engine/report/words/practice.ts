import { buildExercise, LONG_TO_SHORT } from '../../exercise/index.ts';
import type { Practising } from '../../exercise/index.ts';
import { asMeant } from './as-meant.ts';
import { copiesOf, inARow } from './copies.ts';
import { lacksOf } from './lacks.ts';
import { after, again } from './leading-back.ts';
import { ratioPlayed } from './ratio.ts';
import type { Statement } from './said/index.ts';
import type { Found, Scene, Situation } from './scene.ts';

/*
 * An attempt that was to practise something is judged by that, first of all: done, nearly, or not yet. What counts as done the
 * intention says: so often in a row, every note right, in the rhythm meant, no faster than asked.
 */

/** What is said of an attempt at an intention; `faults`: what else is not right with it. */
export const practiceWith =
  (faults: readonly Found[]): Situation =>
  (scene) => {
    const { practised } = scene.exercise;
    return practised === undefined ? null : practiceFound(scene, practised, faults);
  };

function practiceFound(scene: Scene, practised: Practising, faults: readonly Found[]): Found {
  const { intention, repeats } = practised;
  const whole = buildExercise(scene.exercise.choice);
  const row = inARow(scene, intention, copiesOf(scene, practised));
  const heard = asMeant(scene, practised);
  const lacks = lacksOf(scene, practised, whole, row, heard);
  const late = faults.some(({ statement }) => IN_TIME.includes(statement.situation));
  const grave = lacks.some(({ kind }) => GRAVE.includes(kind));
  const near = !grave && row.best >= Math.max(1, intention.times - 1);
  const outcome = lacks.length === 0 && !late ? 'done' : near ? 'nearly' : 'not-yet';
  const ratio = ratioPlayed(scene, practised);
  return {
    statement: {
      situation: 'practised',
      outcome,
      steps: [],
      faults: 0,
      rhythm: intention.rhythm,
      wanted: intention.times,
      right: Math.min(row.best, intention.times),
      rightAtEnd: row.atEnd,
      repeats,
      lacks,
      ...heard,
      ...(ratio !== null && { longToShort: { ...ratio, meant: LONG_TO_SHORT } }),
    },
    ...(outcome === 'done' ? after(scene, whole, intention) : again(scene, whole, intention, outcome, late)),
  };
}

/** With these it is other work, however right its notes are. */
const GRAVE: readonly string[] = ['whole', 'rhythm', 'holds', 'length', 'touch', 'loudness'];

/** Faults of time and of striking together: with them it is not done, however right its notes are. */
const IN_TIME: readonly Statement['situation'][] = [
  'stopped',
  'crossing-late',
  'crossing-late-one-direction',
  'crossing-late-both-ways',
  'late-note',
  'late-at-the-turn',
  'change-hesitates',
  'uneven',
  'uneven-in-pairs',
  'one-hand-leads',
  'hands-apart',
  'chords-spread',
];
