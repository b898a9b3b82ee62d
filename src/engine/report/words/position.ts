import type { Hand } from '../../exercise/index.ts';
import { crossesAt } from './place.ts';
import type { Advice, Task } from './said/index.ts';
import type { Practice, Scene } from './scene.ts';
import { nameOf } from './scene.ts';

/** Fewer keys than this are no hand position. */
const LEAST_KEYS = 3;

/** The hand's place after a crossing struck as one chord, then note by note; null: it has too few keys. */
export function inPosition(
  scene: Scene,
  from: number,
  hand: Hand,
  practice: Practice,
  task: Task,
): readonly [Advice, Practice] | null {
  const names = keysFrom(scene, from, hand);
  if (names.length < LEAST_KEYS) return null;
  return [
    { step: 'position-as-a-chord', names, task },
    { ...practice, fromStep: from, toStep: from + names.length - 1 },
  ];
}

/** From a crossing up to the next one, or to the turn, without repetition. */
function keysFrom(scene: Scene, from: number, hand: Hand): readonly string[] {
  const { steps } = scene.exercise;
  const names: string[] = [];
  for (let step = from; step < steps.length && (step === from || !crossesAt(scene, step, hand)); step++) {
    const own = steps[step]!.notes.find((note) => note.hand === hand);
    // The hand may have a rest there.
    if (own === undefined) break;
    const name = nameOf(own);
    if (names.includes(name) || steps[step - 1]?.turn === true) break;
    names.push(name);
  }
  return names;
}
