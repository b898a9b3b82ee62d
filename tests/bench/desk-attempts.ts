import {
  ALL_FORMS,
  ALL_KEYS,
  buildExercise,
  isRecognised,
  isSolid,
  octaveCounts,
  takesMinorScale,
} from '../../src/engine/exercise/index.ts';
import type { Exercise, ExerciseChoice, Form, MinorScale } from '../../src/engine/exercise/index.ts';
import { createRandom } from '../support/random.ts';
import type { Random } from '../support/random.ts';
import { NO_MISTAKES } from '../support/render.ts';
import type { MistakeCounts, Performance, StudentKnobs } from '../support/render.ts';
import { STUDENT_DEFAULTS } from '../support/student/knobs.ts';
import { perform } from '../support/student/perform.ts';
import { shiftsOf, studentOf } from './attempts.ts';

/** An attempt as a teacher gets it, before it has sounded. */
export interface DeskAttempt {
  readonly exercise: ExerciseChoice;
  readonly octaveShift: number;
  readonly performance: Performance;
}

/** How it was played: without a mistake, with one to three, or begun and broken off. */
export const COURSES = ['clean', 'mistakes', 'broken off'] as const;
export type Course = (typeof COURSES)[number];

/** What is recognised of both hands, each once; of one hand alone the first of them. */
const FORMS: readonly Form[] = ALL_FORMS.filter((form) => isRecognised({ form, hands: 'together' }));
const ALONE: readonly Form[] = FORMS.filter((form) => isRecognised({ form, hands: 'right' }));
const HANDS = ['left', 'right', 'together'] as const;
const MINOR_SCALES: readonly MinorScale[] = ['natural', 'harmonic', 'melodic'];

/** The index-th of all exercises, forms, hands and keys in turn, so that a few hundred hold each kind of each. */
export function deskExercise(index: number, random: Random): ExerciseChoice {
  const hands = HANDS[index % HANDS.length]!;
  const forms = hands === 'together' ? FORMS : ALONE;
  const turn = Math.floor(index / HANDS.length);
  const form = forms[turn % forms.length]!;
  const key = ALL_KEYS[(7 * index + Math.floor(index / 24)) % ALL_KEYS.length]!;
  const lengths = octaveCounts(form);
  return {
    key,
    form,
    hands,
    octaves: lengths[Math.floor(turn / forms.length) % lengths.length]!,
    ...(takesMinorScale(key, form) && { minorScale: random.pick(MINOR_SCALES) }),
  };
}

/** An exercise, how its course goes, and chance → one attempt at it. Seven in ten lie where they are written. */
export function deskAttempt(exercise: ExerciseChoice, course: Course, random: Random): DeskAttempt {
  const written = buildExercise(exercise);
  const { steps } = written;
  const chords = isSolid(exercise.form);
  const notesPerSec = chords ? random.uniform(0.6, 2) : 1.5 * (8 / 1.5) ** random.uniform(0, 1);
  const stepsPerBeat = (steps.length - 1) / (steps.at(-1)!.beat - steps[0]!.beat);
  const shifts = shiftsOf(steps);
  const drawn = mistakesOf(course, random);
  const student: StudentKnobs = {
    ...STUDENT_DEFAULTS,
    ...studentOf(notesPerSec, steps.length, stepsPerBeat, shifts, '', random),
    octaveShift: random.chance(0.6) || shifts.length === 0 ? 0 : random.pick(shifts),
    mistakes: drawn.counts,
    stopAfter: course === 'broken off' ? random.uniform(0.4, 0.85) : null,
  };
  const performance = perform(written, student, random.fork('student'));
  return {
    exercise: written.choice,
    octaveShift: student.octaveShift,
    performance: drawn.stop ? stopped(performance, written, random) : performance,
  };
}

function mistakesOf(course: Course, random: Random): { counts: MistakeCounts; stop: boolean } {
  const counts = { ...NO_MISTAKES };
  let stop = false;
  const many = course === 'mistakes' ? 1 + random.integer(3) : 0;
  for (let index = 0; index < many; index++) {
    const kind = random.pick(['wrong', 'wrong', 'missed', 'slips', 'repeats', 'restarts', 'stop'] as const);
    if (kind === 'stop') stop = true;
    else counts[kind]++;
  }
  return { counts, stop };
}

/** The same with two to four seconds of thinking before one of its inner steps. */
function stopped(performance: Performance, { steps }: Exercise, random: Random): Performance {
  const before = 2 + random.integer(Math.max(1, steps.length - 4));
  const from = performance.strokes.find(({ step }) => step !== null && step >= before)?.timeSec ?? Infinity;
  const laterSec = random.uniform(2, 4);
  const strokes = performance.strokes.map((stroke) =>
    stroke.timeSec < from - 0.08
      ? stroke
      : { ...stroke, timeSec: stroke.timeSec + laterSec, releaseSec: stroke.releaseSec + laterSec },
  );
  return { ...performance, strokes, durationSec: performance.durationSec + laterSec };
}

/** Another source of chance for each number and purpose. */
export function chanceFor(purpose: string, index: number): Random {
  return createRandom(1_000_003 * index + 17).fork(purpose);
}
