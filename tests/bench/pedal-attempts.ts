import { ALL_KEYS, buildExercise } from '../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../src/engine/exercise/index.ts';
import { createRandom } from '../support/random.ts';
import type { Random } from '../support/random.ts';
import type { PianoName, RenderSpec, StudentKnobs } from '../support/render.ts';
import { homeOf, shiftsOf } from './attempts.ts';

/** How a player treats keys and pedal: with the pedal down throughout, or without it in ways that ring on. */
export const TREATMENTS = ['pedal held', 'legato', 'held far over', 'detached', 'mixed'] as const;
export type Treatment = (typeof TREATMENTS)[number];

export interface PedalAttempt {
  readonly treatment: Treatment;
  readonly spec: RenderSpec;
}

const FORMS = ['scale', 'arpeggio', 'broken-triads', 'triads', 'progression'] as const;
/** Dampers that stop a string in half, once and twice the usual time. */
const DAMPERS = [0.5, 1, 2] as const;

/** Number → attempt, always the same: every second with the pedal held, the others in the four ways without it in turn. */
export function pedalAttempt(index: number, piano: PianoName): PedalAttempt {
  const random = createRandom(9_176_003 * index + (piano === 'dev' ? 5 : 6));
  const treatment = index % 2 === 0 ? 'pedal held' : TREATMENTS[1 + (((index - 1) / 2) % 4)]!;
  const form = random.pick(FORMS);
  const chords = form === 'triads' || form === 'progression';
  const octaves = form === 'scale' ? 1 + random.integer(3) : form === 'arpeggio' ? 2 + random.integer(2) : 1;
  const hands = random.pick(['left', 'right', 'right', 'together'] as const);
  const exercise: ExerciseChoice = { key: random.pick(ALL_KEYS), form, hands, octaves };
  const { steps } = buildExercise(exercise);
  const stepsPerBeat = (steps.length - 1) / (steps.at(-1)!.beat - steps[0]!.beat);
  const [least, most] = chords ? [0.7, 1.6] : [1.8, 6];
  const notesPerSec = least * (most / least) ** random.uniform(0, 1);
  const ioiMs = 1000 / notesPerSec;
  const student: Partial<StudentKnobs> = {
    bpm: (60 * notesPerSec) / stepsPerBeat,
    jitterMs: Math.min(12, 0.04 * ioiMs),
    octaveShift: shiftsOf(steps).includes(0) ? 0 : (shiftsOf(steps)[0] ?? 0),
    velocity: random.uniform(50, 90),
    overlapMs: overlapOf(treatment, ioiMs, random),
    ...(treatment === 'pedal held' && { pedal: 'held' }),
  };
  const room = random.chance(0.2)
    ? null
    : { decaySec: random.uniform(0.2, 0.6), directDb: random.uniform(0, 8) };
  const home = { ...homeOf(random), room, damperTimes: random.pick(DAMPERS) };
  return { treatment, spec: { seed: random.integer(2 ** 31), piano, exercise, student, home } };
}

function overlapOf(treatment: Treatment, ioiMs: number, random: Random): number {
  switch (treatment) {
    case 'pedal held':
      return ioiMs * random.uniform(-0.4, 0.2);
    case 'legato':
      return random.uniform(-15, 70);
    case 'held far over':
      return Math.min(ioiMs * random.uniform(0.5, 0.9), 300);
    case 'detached':
      return -ioiMs * random.uniform(0.3, 0.6);
    case 'mixed':
      return ioiMs * random.uniform(-0.3, 0.3);
  }
}
