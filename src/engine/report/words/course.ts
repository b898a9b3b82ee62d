import type { Scene, Situation, Statement } from './scene.ts';
import { practiceAround, spotOf, taskOf } from './scene.ts';
import type { Said, NamedStep, Task } from './types.ts';

/** 3. Stopped, restarted, broken off, begun late: where; next: from one position before that place, slowly, through it. */
const SLOWLY = 0.6;
const ON_STEPS = 2;

const stopped: Situation = {
  name: 'stopped',
  takesSecond: true,
  tell: (scene) => {
    const remark = scene.alignment.remarks.find((one) => one.kind === 'stopped');
    if (remark?.kind !== 'stopped') return null;
    return through(scene, remark.atStep, (at, task) => scene.wording.stopped(at, remark.gapSec, task));
  },
};

const restarted: Situation = {
  name: 'restarted',
  takesSecond: true,
  tell: (scene) => {
    const remark = scene.alignment.remarks.find((one) => one.kind === 'restarted');
    if (remark?.kind !== 'restarted') return null;
    const back = remark.backToStep === 0 ? null : spotOf(scene, remark.backToStep);
    return through(scene, remark.atStep, (at, task) => scene.wording.restarted(at, back, task));
  },
};

const brokenOff: Situation = {
  name: 'broken-off',
  takesSecond: true,
  tell: (scene) => {
    const remark = scene.alignment.remarks.find((one) => one.kind === 'broken-off');
    if (remark?.kind !== 'broken-off') return null;
    return through(scene, remark.lastStep, (at, task) => scene.wording.brokenOff(at, task));
  },
};

const startedLate: Situation = {
  name: 'started-late',
  takesSecond: true,
  tell: (scene) => {
    const remark = scene.alignment.remarks.find((one) => one.kind === 'started-late');
    if (remark?.kind !== 'started-late') return null;
    const said = scene.wording.startedLate(spotOf(scene, remark.firstStep));
    return { ...said, steps: [remark.firstStep] };
  },
};

/** One hand position before a step: back to the last crossing before it, at least two steps. */
function positionBefore(scene: Scene, step: number): number {
  const before = scene.exercise.steps.filter(
    (one) => one.step < step && one.crossings.length > 0 && step - one.step >= 2,
  );
  return Math.max(0, Math.min(before.at(-1)?.step ?? step - 3, step - 2));
}

/** Slowly through the place, from one position before it. */
function through(scene: Scene, step: number, say: (at: NamedStep, task: Task) => Said): Statement {
  const practice = practiceAround(scene, positionBefore(scene, step), step + ON_STEPS, SLOWLY);
  return { ...say(spotOf(scene, step), taskOf(scene, practice)), steps: [step], practice };
}

export const COURSE: readonly Situation[] = [stopped, restarted, brokenOff, startedLate];
