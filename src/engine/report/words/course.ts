import type { CourseRemark } from '../../match/index.ts';
import { practiceAround, spotOf, taskOf } from './place.ts';
import type { Advice } from './said/index.ts';
import type { Found, Scene, Situation, Situations } from './scene.ts';
import { isChordForm } from './scene.ts';
import { timesBefore, turnAbout } from './variety.ts';

/** Stopped, restarted, broken off, begun late: where; next: from one position before that place, slowly, through it. */

const SLOWLY = 0.6;
const ON_STEPS = 2;

/** What the course of the attempt was, where it is of this kind. */
function remarkOf<Kind extends CourseRemark['kind']>(
  scene: Scene,
  kind: Kind,
): Extract<CourseRemark, { readonly kind: Kind }> | undefined {
  return scene.alignment.remarks.find(
    (one): one is Extract<CourseRemark, { readonly kind: Kind }> => one.kind === kind,
  );
}

const stopped: Situation = (scene) => {
  const remark = remarkOf(scene, 'stopped');
  if (remark === undefined) return null;
  const at = spotOf(scene, remark.atStep);
  const given = { steps: [remark.atStep], faults: 1, at, gapSec: remark.gapSec };
  return through(scene, remark.atStep, { situation: 'stopped', ...given });
};

const restarted: Situation = (scene) => {
  const remark = remarkOf(scene, 'restarted');
  if (remark === undefined) return null;
  const back = remark.backToStep === 0 ? null : spotOf(scene, remark.backToStep);
  const at = spotOf(scene, remark.atStep);
  return through(scene, remark.atStep, {
    situation: 'restarted',
    steps: [remark.atStep],
    faults: 1,
    at,
    back,
  });
};

const brokenOff: Situation = (scene) => {
  const remark = remarkOf(scene, 'broken-off');
  if (remark === undefined) return null;
  const at = spotOf(scene, remark.lastStep);
  return through(scene, remark.lastStep, {
    situation: 'broken-off',
    steps: [remark.lastStep],
    faults: 1,
    at,
  });
};

const startedLate: Situation = (scene) => {
  const remark = remarkOf(scene, 'started-late');
  if (remark === undefined) return null;
  const at = spotOf(scene, remark.firstStep);
  return {
    statement: { situation: 'started-late', steps: [remark.firstStep], faults: 1, at },
    advice: { step: 'wait-then-begin' },
  };
};

/** One hand position before a step: back to the last crossing before it, at least two steps; of chords the one before. */
function positionBefore(scene: Scene, step: number): number {
  if (isChordForm(scene.exercise)) return Math.max(0, step - 1);
  const before = scene.exercise.steps.filter(
    (one) => one.step < step && one.crossings.length > 0 && step - one.step >= 2,
  );
  return Math.max(0, Math.min(before.at(-1)?.step ?? step - 3, step - 2));
}

/** Slowly through the place, from one position before it. */
function through(scene: Scene, step: number, statement: Found['statement']): Found {
  const practice = practiceAround(scene, positionBefore(scene, step), step + ON_STEPS, SLOWLY);
  const task = taskOf(scene, practice);
  return {
    statement,
    advice: turnAbout<Advice>(timesBefore(scene, 'stopped', 'restarted', 'broken-off'), [
      { step: 'straight-through', task },
      { step: 'one-note-more', task },
    ]),
    practice,
  };
}

export const COURSE: Situations = {
  stopped,
  restarted,
  'broken-off': brokenOff,
  'started-late': startedLate,
};
