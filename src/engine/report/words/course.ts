import type { Situation } from './scene.ts';
import { handWords, isChordForm, practiceAround, say, sayStretch, whereIs } from './scene.ts';
import type { Scene, Told } from './scene.ts';

/** 3. Stopped, restarted, broken off, begun late: where; next: from one position before that place, slowly, through it. */
const SLOWLY = 0.6;
const ON_STEPS = 2;

const stopped: Situation = {
  name: 'stopped',
  takesSecond: true,
  tell: (scene) => {
    const remark = scene.alignment.remarks.find((one) => one.kind === 'stopped');
    if (remark?.kind !== 'stopped') return null;
    const place = placeOf(scene, remark.atStep);
    return through(
      scene,
      remark.atStep,
      `You stopped after ${place}, for ${remark.gapSec.toFixed(1)} s`,
      `after ${place}`,
    );
  },
};

const restarted: Situation = {
  name: 'restarted',
  takesSecond: true,
  tell: (scene) => {
    const remark = scene.alignment.remarks.find((one) => one.kind === 'restarted');
    if (remark?.kind !== 'restarted') return null;
    const place = placeOf(scene, remark.atStep);
    const back =
      remark.backToStep === 0 ? 'began again' : `went back to ${placeOf(scene, remark.backToStep)}`;
    return through(scene, remark.atStep, `At ${place} you ${back}`, `At ${place}`);
  },
};

const brokenOff: Situation = {
  name: 'broken-off',
  takesSecond: true,
  tell: (scene) => {
    const remark = scene.alignment.remarks.find((one) => one.kind === 'broken-off');
    if (remark?.kind !== 'broken-off') return null;
    const place = placeOf(scene, remark.lastStep);
    return through(scene, remark.lastStep, `It breaks off after ${place}`, `after ${place}`);
  },
};

const startedLate: Situation = {
  name: 'started-late',
  takesSecond: true,
  tell: (scene) => {
    const remark = scene.alignment.remarks.find((one) => one.kind === 'started-late');
    if (remark?.kind !== 'started-late') return null;
    const place = placeOf(scene, remark.firstStep);
    return {
      sentence: `The first that was heard is ${place}`,
      emphasis: place,
      nextStep: 'wait until it listens, then play from the beginning.',
      steps: [remark.firstStep],
    };
  },
};

/** "E♭ going up", "the V7" */
function placeOf(scene: Scene, step: number): string {
  if (isChordForm(scene.exercise)) return whereIs(scene, step).replace(/^in /, '');
  return `${say(scene.exercise.steps[step]!.notes.at(-1)!)} ${whereIs(scene, step)}`.trim();
}

/** One hand position before a step: back to the last crossing before it, at least two steps. */
function positionBefore(scene: Scene, step: number): number {
  const before = scene.exercise.steps.filter(
    (one) => one.step < step && one.crossings.length > 0 && step - one.step >= 2,
  );
  return Math.max(0, Math.min(before.at(-1)?.step ?? step - 3, step - 2));
}

function through(scene: Scene, step: number, sentence: string, emphasis: string): Told {
  const practice = practiceAround(scene, positionBefore(scene, step), step + ON_STEPS, SLOWLY);
  const stretch = sayStretch(scene, practice.fromStep, practice.toStep);
  return {
    sentence,
    emphasis,
    nextStep: `${handWords(scene.exercise)}, ${stretch}, slowly, at ${practice.tempoBpm}, straight through that place.`,
    steps: [step],
    practice,
  };
}

export const COURSE: readonly Situation[] = [stopped, restarted, brokenOff, startedLate];
