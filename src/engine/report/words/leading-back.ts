import { buildExercise, isWhole, WHOLE } from '../../exercise/index.ts';
import type { Exercise, Hands, Intention, Practising } from '../../exercise/index.ts';
import { isMeasured } from '../measures/index.ts';
import { taskOf } from './place.ts';
import type { Advice } from './said/index.ts';
import type { Practice, Scene } from './scene.ts';

/* What comes after work on an intention: the same again, or a step back towards the whole. */

const SLOWER_SHARE = 0.85;
const LEAST_BPM = 40;
/** No rung of a ladder is lower. */
const LEAST_RUNG_BPM = 20;

/** What to do next, and its set-up. */
export interface Step {
  readonly advice: Advice;
  readonly practice: Practice;
}

/**
 * Done: note by note where chords were struck, the next rhythm, then even; the other hand where each was to play by itself, then both;
 * with what comes before; the whole. From there on what is said of any attempt leads: the other hand, together, faster.
 */
export function after(scene: Scene, whole: Exercise, intention: Intention): Step {
  if (intention.ladderBpm !== undefined) return rungUp(scene, whole, intention, intention.ladderBpm);
  const { then = [], blocked, apart, ...same } = intention;
  const [rhythm = 'even', ...later] = then;
  const next = { ...same, ...(apart && { apart }) };
  if (blocked === true)
    return practise(scene, whole, { ...next, rhythm, ...(later.length > 0 && { then: later }) });
  if (intention.rhythm !== 'even')
    return practise(scene, whole, { ...next, rhythm, ...(later.length > 0 && { then: later }) });
  if (apart === true) return afterOneHand(scene, whole, intention);
  const last = whole.steps.length - 1;
  const { fromStep, toStep } = intention.stretch ?? { fromStep: 0, toStep: last };
  const length = toStep - fromStep + 1;
  if (fromStep > 0 && 2 * length <= last) {
    const stretch = { fromStep: Math.max(0, fromStep - length), toStep };
    return practise(scene, whole, { ...same, stretch }, { before: true });
  }
  const practice = { fromStep: 0, toStep: last, tempoBpm: bpmOf(scene, 1), intention: WHOLE };
  return {
    advice: { step: 'now-the-whole', task: taskOf({ ...scene, exercise: whole }, practice) },
    practice,
  };
}

/** The other hand, unless it has done the same; then both. */
function afterOneHand(scene: Scene, whole: Exercise, intention: Intention): Step {
  const other = whole.choice.hands === 'left' ? 'right' : 'left';
  const isDone = scene.alone[other].some(({ words }) => {
    const said = words.said?.statements.at(0);
    return said?.situation === 'practised' && said.outcome === 'done';
  });
  const { apart: _, ...together } = intention;
  return isDone
    ? practise(scene, whole, together, { hands: 'together' })
    : practise(scene, whole, intention, { hands: other });
}

const rungUp = (scene: Scene, whole: Exercise, intention: Intention, byBpm: number): Step =>
  practise(scene, whole, intention, { byBpm, rung: 'up' });

/** So many rungs below the one that is uneven somebody stays for now. Common practice, no source. */
const RUNGS_BACK = 2;

/** The same once more; slower where it is far from it. Of a ladder, two rungs back where it was `late` or uneven. */
export function again(
  scene: Scene,
  whole: Exercise,
  intention: Intention,
  outcome: 'nearly' | 'not-yet',
  late: boolean,
): Step {
  const { ladderBpm, ...stays } = intention;
  if (ladderBpm !== undefined)
    return late
      ? practise(scene, whole, stays, { byBpm: -RUNGS_BACK * ladderBpm, rung: 'back' })
      : practise(scene, whole, intention);
  return practise(scene, whole, intention, { share: outcome === 'nearly' ? 1 : SLOWER_SHARE });
}

/** The same at its tempo, where of this attempt nothing can be told. */
export function sameAgain(scene: Scene, { intention }: Practising): Practice {
  return practise(scene, buildExercise(scene.exercise.choice), intention).practice;
}

/** In which way it is other work than before. */
interface How {
  readonly share?: number;
  readonly byBpm?: number;
  readonly before?: boolean;
  readonly hands?: Hands;
  readonly rung?: 'up' | 'back';
}

function practise(
  scene: Scene,
  whole: Exercise,
  intention: Intention,
  { share = 1, byBpm = 0, before = false, hands, rung }: How = {},
): Step {
  const stretch = intention.stretch ?? { fromStep: 0, toStep: whole.steps.length - 1 };
  const practice = {
    ...stretch,
    tempoBpm: Math.max(LEAST_RUNG_BPM, bpmOf(scene, share) + byBpm),
    ...(hands !== undefined && { hands }),
    intention,
  };
  const task = taskOf({ ...scene, exercise: whole }, practice, hands);
  if (isWhole(intention) && hands === undefined && rung === undefined)
    return { advice: { step: 'now-the-whole', task }, practice };
  const { rhythm, times } = intention;
  return {
    advice: { step: 'practise', task, rhythm, times, before, intention, ...(rung && { rung }) },
    practice,
  };
}

/** The tempo asked for, or where none was, that played. */
function bpmOf({ report, measured }: Scene, share: number): number {
  const { tempoBpm } = measured.measures;
  const asked = report.targetBpm ?? (isMeasured(tempoBpm) ? tempoBpm.value : 60);
  return Math.round(Math.max(asked * share, Math.min(LEAST_BPM, asked)));
}
