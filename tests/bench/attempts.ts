import {
  ALL_FORMS,
  ALL_KEYS,
  buildExercise,
  handsFor,
  isRecognised,
  isSolid,
  octaveCounts,
} from '../../src/engine/exercise/index.ts';
import type { ExerciseChoice, ExpectedStep, Form } from '../../src/engine/exercise/index.ts';
import { createRandom } from '../support/random.ts';
import type { Random } from '../support/random.ts';
import { CODECS } from './codec.ts';
import { NO_MISTAKES } from '../support/render.ts';
import type {
  HomeKnobs,
  MistakeCounts,
  NoiseKind,
  PianoName,
  RenderSpec,
  StudentKnobs,
} from '../support/render.ts';

/**
 * Chords of one hand and both hands, both with more wrong and missed notes than in `chords` and
 * `together`; hands an octave apart with one of them leaving notes out; each hard condition by itself; what both hands are to reach, row by row; wrong notes
 * that are hard to tell for what they are; and one hand where both were chosen.
 */
export type ChordSet =
  'one-hand' | 'both-hands' | 'octave-pairs' | 'conditions' | 'aims' | 'kinds' | 'one-of-two';

/**
 * standard: what the targets are stated for; the others are harder and reported apart. forms: those that are heard only where they
 * were chosen, with one hand or both. course: standard ones that break off
 * or are not the exercise asked for; codec: standard ones as sent by a messenger.
 */
export type AttemptSet =
  'standard' | 'forms' | 'chords' | 'together' | 'hard' | 'course' | 'codec' | ChordSet;

export interface Attempt {
  readonly set: AttemptSet;
  readonly spec: RenderSpec;
  readonly notesPerSec: number;
  /** what is particular about it, in the sets hard, course, codec and conditions */
  readonly hardship: string;
  /** the exercise asked for, where it is not the one played */
  readonly asked?: ExerciseChoice;
}

const SINGLE_FORMS: readonly Form[] = ['arpeggio', 'scale', 'broken-triads'];
const CHORD_FORMS: readonly Form[] = ['triads', 'progression'];
/** All that is not what every key is asked for. */
export const MORE_FORMS = ALL_FORMS.filter((form) => ![...SINGLE_FORMS, ...CHORD_FORMS].includes(form));
const NOISES: readonly NoiseKind[] = ['pink', 'pink', 'hum', 'speech', 'dishes', 'metronome'];
/** Lowest key of the test piano; highest key of a piano. */
const KEY_RANGE = { lowest: 24, highest: 108 };

/** The set, the piano and a number → one attempt, always the same; of a form that is asked for, or of one of the set. */
export function attemptOf(set: AttemptSet, piano: PianoName, index: number, asked?: Form): Attempt {
  const random = createRandom(1_000_003 * index + set.length * 7919 + (piano === 'dev' ? 1 : 2));
  const chords = set === 'chords' || (set === 'together' && random.chance(0.35));
  const drawn = random.pick(set === 'forms' ? MORE_FORMS : chords ? CHORD_FORMS : SINGLE_FORMS);
  const form = asked ?? drawn;
  const lengths = octaveCounts(form).length;
  const octaves = lengths > 1 ? 1 + random.integer(lengths) : 1;
  // What is made by both hands is played by both.
  const needsBoth =
    handsFor(form).length === 1 ||
    (isRecognised({ form, hands: 'together' }) && !isRecognised({ form, hands: 'right' }));
  const together = set === 'together' || (set === 'forms' && (random.chance(0.5) || needsBoth));
  const hands = together ? 'together' : random.pick(['left', 'right'] as const);
  const exercise: ExerciseChoice = { key: ALL_KEYS[index % ALL_KEYS.length]!, form, hands, octaves };
  const written = buildExercise(exercise);
  const notesPerSec =
    chords || isSolid(form) ? random.uniform(0.6, 2) : 1.5 * (8 / 1.5) ** random.uniform(0, 1);
  const steps = written.steps;
  const stepsPerBeat = (steps.length - 1) / (steps.at(-1)!.beat - steps[0]!.beat);
  const hardships = { hard: Object.keys(HARDSHIPS), course: COURSES, codec: Object.keys(CODECS) };
  const hardship = set in hardships ? random.pick(hardships[set as keyof typeof hardships]) : '';
  return {
    set,
    notesPerSec,
    hardship,
    spec: {
      seed: random.integer(2 ** 31),
      piano,
      exercise,
      student: studentOf(notesPerSec, steps.length, stepsPerBeat, shiftsOf(steps), hardship, random),
      home: { ...homeOf(random), ...HARDSHIPS[hardship]?.(random) },
    },
    ...(hardship === 'another key asked' ? { asked: { ...exercise, key: neighbourKey(exercise.key) } } : {}),
    ...(hardship === 'another form asked'
      ? { asked: { ...exercise, form: form === 'scale' ? 'arpeggio' : 'scale' } }
      : {}),
  };
}

/** Octaves up or down at which a piano, the smaller of the two, has all the keys; 0 twice, being likelier. */
export function shiftsOf(steps: readonly ExpectedStep[]): readonly number[] {
  const midis = steps.flatMap((step) => step.notes.map((note) => note.midi));
  return [-1, 0, 0, 1].filter(
    (shift) =>
      Math.min(...midis) + 12 * shift - 3 >= KEY_RANGE.lowest &&
      Math.max(...midis) + 12 * shift + 3 <= KEY_RANGE.highest,
  );
}

/** How somebody plays at that speed. */
export function studentOf(
  notesPerSec: number,
  stepCount: number,
  stepsPerBeat: number,
  shifts: readonly number[],
  hardship: string,
  random: Random,
): Partial<StudentKnobs> {
  const ioiMs = 1000 / notesPerSec;
  return {
    bpm: (60 * notesPerSec) / stepsPerBeat,
    jitterMs: random.uniform(4, Math.min(28, ioiMs * 0.08)),
    driftPercent: random.normal(6),
    lateCrossing: random.chance(0.4) ? { ms: random.uniform(30, Math.min(200, ioiMs * 0.8)) } : null,
    chordSpreadMs: random.uniform(4, 50),
    handsApartMs: { mean: random.uniform(-15, 25), sd: random.uniform(4, 15) },
    overlapMs: ioiMs * random.uniform(-0.4, 0.25),
    velocity: random.uniform(45, 95),
    loudnessJitterDb: random.uniform(0.5, 2.5),
    endsDb: random.uniform(-4, 1),
    thumbDb: random.uniform(0, 2.5),
    innerDb: random.uniform(-4, 0),
    octaveShift: random.pick(shifts.length > 0 ? shifts : [0]),
    mistakes: mistakesOf(stepCount, random),
    ...(hardship === 'pedal held' ? { pedal: 'held' } : {}),
    ...(hardship === 'broken off' ? { stopAfter: random.uniform(0.4, 0.85) } : {}),
  };
}

/** The key a fifth away, of the same mode: all but one or two of its notes are the same. */
function neighbourKey(key: string): string {
  const at = ALL_KEYS.indexOf(key);
  const half = ALL_KEYS.length / 2;
  return ALL_KEYS[Math.floor(at / half) * half + ((at + 1) % half)]!;
}

function mistakesOf(stepCount: number, random: Random): MistakeCounts {
  if (random.chance(0.35)) return NO_MISTAKES;
  const most = Math.max(1, Math.min(6, Math.floor(stepCount / 5)));
  const counts = { ...NO_MISTAKES };
  const count = 1 + random.integer(most);
  for (let index = 0; index < count; index++)
    counts[random.pick(['wrong', 'missed', 'slips', 'repeats', 'restarts'] as const)]++;
  return counts;
}

/** Homes of the standard set: noise 25–50 dB below, rooms to 0.5 s, phone or not, −90 … +40 cents. */
export function homeOf(random: Random): Partial<HomeKnobs> {
  return {
    tuningCents: random.uniform(-90, 40),
    scatterCents: random.uniform(0, 6),
    stretch: random.pick([0, 1]),
    room: random.chance(0.2) ? null : { decaySec: random.uniform(0.2, 0.5), directDb: random.uniform(0, 10) },
    noises: [
      { kind: 'pink', belowDb: random.uniform(35, 55) },
      { kind: random.pick(NOISES), belowDb: random.uniform(25, 50) },
    ],
    metronomeBpm: random.uniform(50, 120),
    phone: random.chance(0.5),
    peakDb: random.uniform(-18, -2),
  };
}

const COURSES = ['broken off', 'another key asked', 'another form asked'];

/** One thing made hard at a time, the rest as in the standard set. */
const HARDSHIPS: Readonly<Record<string, (random: Random) => Partial<HomeKnobs>>> = {
  'noise 10-25 dB': (random) => ({
    noises: [{ kind: random.pick(NOISES), belowDb: random.uniform(10, 25) }],
  }),
  'speech 15 dB': () => ({ noises: [{ kind: 'speech', belowDb: 15 }] }),
  'room 0.6-1.2 s': (random) => ({
    room: { decaySec: random.uniform(0.6, 1.2), directDb: random.uniform(-3, 6) },
  }),
  'level control': () => ({ levelControl: true }),
  clipping: (random) => ({ clipDb: random.uniform(3, 9) }),
  'peaks at -38 dB': () => ({ peakDb: -38 }),
  'pedal held': () => ({}),
  stereo: (random) => ({ channels: random.pick(['stereo', 'right-only', 'opposed'] as const) }),
};
