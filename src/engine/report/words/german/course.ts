import type { Wording } from '../english/index.ts';
import type { Task } from '../types.ts';
import { capital, hands, spotAfter, stretch } from './places.ts';

const through = (task: Task): string =>
  `${hands(task.hands)}, ${stretch(task.stretch)}, langsam, bei ${task.tempoBpm}, ohne Halt durch diese Stelle.`;

export const COURSE: Pick<Wording, 'stopped' | 'restarted' | 'brokenOff' | 'startedLate'> = {
  stopped: (at, gapSec, task) => {
    const place = capital(spotAfter('nach', at));
    return {
      sentence: `${place} hast du ${gapSec.toFixed(1).replace('.', ',')} s lang angehalten`,
      emphasis: place,
      nextStep: through(task),
    };
  },
  restarted: (at, back, task) => {
    const place = capital(spotAfter('bei', at));
    return {
      sentence:
        back === null
          ? `${place} hast du von vorn begonnen`
          : `${place} bist du ${spotAfter('zu', back)} zurückgegangen`,
      emphasis: place,
      nextStep: through(task),
    };
  },
  brokenOff: (at, task) => {
    const place = capital(spotAfter('nach', at));
    return { sentence: `${place} bricht es ab`, emphasis: place, nextStep: through(task) };
  },
  startedLate: (at) => ({
    sentence: `Zu hören ist es erst ${spotAfter('ab', at)}`,
    emphasis: spotAfter('ab', at),
    nextStep: 'Warte, bis zugehört wird, dann spiel von Anfang an.',
  }),
};
