import type { Said, NamedStep, Task } from '../types.ts';
import { hands, spot, stretch } from './places.ts';

const through = (task: Task): string =>
  `${hands(task.hands)}, ${stretch(task.stretch)}, slowly, at ${task.tempoBpm}, straight through that place.`;

export const COURSE = {
  stopped: (at: NamedStep, gapSec: number, task: Task): Said => ({
    sentence: `You stopped after ${spot(at)}, for ${gapSec.toFixed(1)} s`,
    emphasis: `after ${spot(at)}`,
    nextStep: through(task),
  }),
  /** `back` null: to the very beginning */
  restarted: (at: NamedStep, back: NamedStep | null, task: Task): Said => ({
    sentence: `At ${spot(at)} you ${back === null ? 'began again' : `went back to ${spot(back)}`}`,
    emphasis: `At ${spot(at)}`,
    nextStep: through(task),
  }),
  brokenOff: (at: NamedStep, task: Task): Said => ({
    sentence: `It breaks off after ${spot(at)}`,
    emphasis: `after ${spot(at)}`,
    nextStep: through(task),
  }),
  startedLate: (at: NamedStep): Said => ({
    sentence: `The first that was heard is ${spot(at)}`,
    emphasis: spot(at),
    nextStep: 'wait until it listens, then play from the beginning.',
  }),
};
