import { buildExercise, groupOf, LONG_TO_SHORT } from '../../exercise/index.ts';
import type { Intention, Practising } from '../../exercise/index.ts';
import { surelyOver, isMeasured } from '../measures/index.ts';
import { copiesOf, inARow } from './copies.ts';
import { wholeOf, taskOf } from './place.ts';
import type { Advice, Statement } from './said/index.ts';
import type { Found, Practice, Scene, Situation } from './scene.ts';
import { ratioPlayed } from './ratio.ts';

/*
 * An attempt that was to practise something is judged by that, first of all: done, nearly, or not yet. What counts as done the
 * intention says: so often in a row, every note right, in the rhythm meant, no faster than asked.
 */

/** What a rhythm needs to be one at least (the mildest that is practised, 2 : 1, is hardly played under it); common practice, no source. */
export const LEAST_APART = 1.7;
/** A held note, or a stop, lasts so many times the other steps at least. */
const LEAST_HELD = 1.5;
/** Slow work that is played faster by over this share is other work. Common practice, no source. */
const FASTER_SHARE = 1.25;
const SLOWER_SHARE = 0.85;
const LEAST_BPM = 40;

type Lack = Extract<Statement, { readonly situation: 'practised' }>['lacks'][number];

/** What is said of an attempt at an intention; `faults`: what else is not right with it. */
export const practiceWith = (faults: readonly Found[]): Situation => ({
  name: 'practised',
  find: (scene) => {
    const { practised } = scene.exercise;
    return practised === undefined ? null : practiceFound(scene, practised, faults);
  },
});

function practiceFound(scene: Scene, practised: Practising, faults: readonly Found[]): Found {
  const { intention, repeats } = practised;
  const copies = copiesOf(scene, practised);
  const row = inARow(scene, intention, copies);
  const lacks = [...lacksOf(scene, practised), ...timesLacking(intention, repeats, row.best)];
  const late = faults.some(({ statement }) => IN_TIME.includes(statement.situation));
  const grave = lacks.some(({ kind }) => kind === 'whole' || kind === 'rhythm' || kind === 'holds');
  const near = !grave && row.best >= Math.min(intention.times, Math.max(1, intention.times - 1));
  const outcome = lacks.length === 0 && !late ? 'done' : near ? 'nearly' : 'not-yet';
  const ratio = ratioPlayed(scene, practised);
  const { advice, practice } =
    outcome === 'done' ? after(scene, intention) : again(scene, intention, outcome);
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
      ...(ratio !== null && { longToShort: { ...ratio, meant: LONG_TO_SHORT } }),
    },
    gravity: 1,
    advice,
    practice,
  };
}

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

function timesLacking(intention: Intention, repeats: number, right: number): readonly Lack[] {
  if (repeats === 0 || right >= intention.times) return [];
  return [{ kind: 'times', right, wanted: intention.times }];
}

function lacksOf(scene: Scene, practised: Practising): readonly Lack[] {
  const { intention, repeats } = practised;
  if (repeats === 0) return [{ kind: 'whole' }];
  const { targetBpm } = scene.report;
  const { tempoBpm } = scene.measured.measures;
  const fast =
    targetBpm !== null &&
    surelyOver(tempoBpm, targetBpm * FASTER_SHARE, scene.criteria) &&
    isMeasured(tempoBpm)
      ? [{ kind: 'tempo' as const, playedBpm: Math.round(tempoBpm.value), aimBpm: Math.round(targetBpm) }]
      : [];
  return [...rhythmLacking(scene, practised, intention), ...fast];
}

function rhythmLacking(scene: Scene, practised: Practising, { rhythm }: Intention): readonly Lack[] {
  const ratio = ratioPlayed(scene, practised);
  if (ratio === null) return [];
  const pairs = rhythm === 'long-short' || rhythm === 'short-long';
  const least = pairs ? LEAST_APART : LEAST_HELD;
  const short = ratio.value + scene.criteria.sureBy * ratio.plusMinus < least;
  if (!short) return [];
  if (pairs) return [{ kind: 'rhythm', rhythm, played: ratio.value, turned: ratio.value < 1 / LEAST_APART }];
  return [{ kind: 'holds', rhythm, group: groupOf(rhythm) }];
}

/** Done: the next rhythm, then even, then with what comes before, then the whole at that tempo. */
function after(scene: Scene, intention: Intention): { readonly advice: Advice; readonly practice: Practice } {
  const [rhythm = 'even', ...then] = intention.then ?? [];
  const { then: _, ...same } = intention;
  if (intention.rhythm !== 'even')
    return practise(scene, { ...same, rhythm, ...(then.length > 0 && { then }) }, 1);
  const last = wholeExercise(scene).steps.length - 1;
  const { fromStep, toStep } = intention.stretch ?? { fromStep: 0, toStep: last };
  const length = toStep - fromStep + 1;
  if (fromStep > 0 && 2 * length <= last)
    return practise(
      scene,
      { ...same, stretch: { fromStep: Math.max(0, fromStep - length), toStep } },
      1,
      true,
    );
  const practice = { ...wholeOf(whole(scene), 1), tempoBpm: bpmOf(scene, 1) };
  return { advice: { step: 'now-the-whole', task: taskOf(whole(scene), practice) }, practice };
}

/** The same once more; slower where it is far from it. */
function again(scene: Scene, intention: Intention, outcome: 'nearly' | 'not-yet') {
  return practise(scene, intention, outcome === 'nearly' ? 1 : SLOWER_SHARE);
}

function practise(
  scene: Scene,
  intention: Intention,
  share: number,
  before = false,
): { readonly advice: Advice; readonly practice: Practice } {
  const last = wholeExercise(scene).steps.length - 1;
  const stretch = intention.stretch ?? { fromStep: 0, toStep: last };
  const practice = { ...stretch, tempoBpm: bpmOf(scene, share), intention };
  const { rhythm, times } = intention;
  return {
    advice: { step: 'practise', task: taskOf(whole(scene), practice), rhythm, times, before },
    practice,
  };
}

/** The tempo asked for, or where none was, that played. */
function bpmOf({ report, measured }: Scene, share: number): number {
  const { tempoBpm } = measured.measures;
  const asked = report.targetBpm ?? (isMeasured(tempoBpm) ? tempoBpm.value : 60);
  return Math.round(Math.max(asked * share, Math.min(LEAST_BPM, asked)));
}

const wholeExercise = ({ exercise }: Scene) => buildExercise(exercise.choice);
const whole = (scene: Scene): Scene => ({ ...scene, exercise: wholeExercise(scene) });
