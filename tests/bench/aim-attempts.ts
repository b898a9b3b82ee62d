import { ALL_KEYS, buildExercise } from '../../src/engine/exercise/index.ts';
import type { Exercise, ExerciseChoice, Form, Hand } from '../../src/engine/exercise/index.ts';
import { createRandom } from '../support/random.ts';
import type { Random } from '../support/random.ts';
import { NO_MISTAKES } from '../support/render.ts';
import type { HomeKnobs, PianoName, RenderSpec, StudentKnobs } from '../support/render.ts';
import type { Mistake } from '../support/student/mistakes.ts';
import { DB_PER_VELOCITY } from '../support/student/perform.ts';
import { homeOf, shiftsOf, studentOf } from './attempts.ts';
import type { Attempt } from './attempts.ts';

/** One thing at a time that makes both hands hard to hear, and what F at ±50 ms is to be reached. */
export interface AimRow {
  readonly wanted: number;
  readonly home?: Partial<HomeKnobs>;
  /** steps a second, of three octaves up and down */
  readonly perSec?: number;
  /** the upper hand against the lower, dB; it leaves out one note in ten */
  readonly upperDb?: number;
  /** what hands apart sound like is known from an attempt of each, some 5 dB softer */
  readonly apart?: boolean;
  /** one to four slips of all kinds */
  readonly slips?: boolean;
  /** one hand alone, for comparison */
  readonly oneHand?: boolean;
}

const unequal = (upperDb: number): readonly [string, AimRow] => [
  `upper hand ${upperDb > 0 ? '+' : '−'}${Math.abs(upperDb)} dB`,
  { wanted: upperDb > 0 ? 0.992 : 0.985, upperDb },
];
const apartToo = ([name, row]: readonly [string, AimRow]): readonly [string, AimRow] => [
  `${name}, apart known`,
  { ...row, apart: true },
];
const HARD: readonly (readonly [string, AimRow])[] = [
  ['counting aloud 6 dB below', { wanted: 0.975, home: { noises: [{ kind: 'speech', belowDb: 6 }] } }],
  ['counting aloud as loud', { wanted: 0.975, home: { noises: [{ kind: 'speech', belowDb: 0 }] } }],
  ['noise 5 dB below', { wanted: 0.975, home: { noises: [{ kind: 'pink', belowDb: 5 }] } }],
  ['room of 1.2 s', { wanted: 0.975, home: { room: { decaySec: 1.2, directDb: 0 } } }],
];

/** Rows by name. Each is played in turn, so that any count spreads over all. */
export const AIM_ROWS: Readonly<Record<string, AimRow>> = Object.fromEntries([
  ['equal hands', { wanted: 0.992 }],
  apartToo(['equal hands', { wanted: 0.992 }]),
  ['up to four slips', { wanted: 0.985, slips: true }],
  apartToo(['up to four slips', { wanted: 0.985, slips: true }]),
  ...HARD,
  ...HARD.map(([name, row]) => [`${name}, one hand`, { ...row, wanted: 0.98, oneHand: true }] as const),
  ...[8, 10, 12, 14].map(
    (perSec) => [`${perSec} a second`, { wanted: perSec <= 8 ? 0.985 : 0.975, perSec }] as const,
  ),
  ...[4, 8, 12, -4, -8, -12].map(unequal),
  apartToo(unequal(-4)),
  apartToo(unequal(-8)),
  apartToo(unequal(-12)),
]);

/** An attempt of a row, and the attempts of one hand that were played before it. */
export interface AimAttempt extends Attempt {
  readonly before: readonly RenderSpec[];
}

const FORMS: readonly Form[] = ['arpeggio', 'triads', 'progression', 'scale', 'arpeggio', 'triads'];
const LEFT_OUT = 0.1;
const SOFTER_DB = 5;
/** Semitones by which a slip misses: neighbours, thirds, octaves. */
const SLIPS_BY = [-1, 1, -2, 2, -3, 3, -4, 4, -12, 12];

/** The piano and a number → one attempt, always the same. Rows come in turn, and within each the forms. */
export function aimAttemptOf(piano: PianoName, index: number): AimAttempt {
  const random = createRandom(600_011 * index + (piano === 'dev' ? 1 : 2));
  const names = Object.keys(AIM_ROWS);
  const hardship = names[index % names.length]!;
  const row = AIM_ROWS[hardship]!;
  const turn = Math.floor(index / names.length);
  const form = row.perSec === undefined ? FORMS[turn % FORMS.length]! : turn % 2 === 0 ? 'arpeggio' : 'scale';
  const single = form === 'arpeggio' || form === 'scale';
  const octaves = row.perSec !== undefined ? 3 : single ? 1 + random.integer(2) : 1;
  const hands = row.oneHand === true ? random.pick(['left', 'right'] as const) : 'together';
  const exercise: ExerciseChoice = { key: random.pick(ALL_KEYS), form, hands, octaves };
  const written = buildExercise(exercise);
  const { steps } = written;
  const notesPerSec =
    row.perSec ?? (single ? 1.5 * (7 / 1.5) ** random.uniform(0, 1) : random.uniform(0.6, 2));
  const stepsPerBeat = (steps.length - 1) / (steps.at(-1)!.beat - steps[0]!.beat);
  const student: Partial<StudentKnobs> = {
    ...studentOf(notesPerSec, steps.length, stepsPerBeat, shiftsOf(steps), '', random),
    mistakes: row.slips === true ? slips(written, random) : NO_MISTAKES,
    ...(row.perSec !== undefined && { lateCrossing: null }),
    ...(row.upperDb !== undefined && unequalHands(written, row.upperDb, random)),
  };
  const spec = {
    seed: random.integer(2 ** 31),
    piano,
    exercise,
    student,
    home: { ...homeOf(random), ...row.home },
  };
  return {
    set: 'aims',
    notesPerSec,
    hardship,
    spec,
    before: row.apart === true ? (['left', 'right'] as const).map((hand) => handAlone(spec, hand)) : [],
  };
}

/** The same exercise, piano and place by one hand, softer and without mistakes. The seed is the same, for the place's sake. */
function handAlone(spec: RenderSpec, hands: Hand): RenderSpec {
  const { velocity = 70 } = spec.student ?? {};
  return {
    ...spec,
    exercise: { ...spec.exercise, hands },
    student: {
      ...spec.student,
      leftHandDb: 0,
      velocity: velocity - SOFTER_DB / DB_PER_VELOCITY,
      mistakes: NO_MISTAKES,
    },
  };
}

function unequalHands({ steps }: Exercise, upperDb: number, random: Random): Partial<StudentKnobs> {
  const mistakes = steps.flatMap(({ step, notes }): readonly Mistake[] =>
    random.chance(LEFT_OUT)
      ? [{ kind: 'missed', step, note: notes.findIndex((note) => note.hand === 'right') }]
      : [],
  );
  const velocity = random.uniform(62, 78) + upperDb / 2 / DB_PER_VELOCITY;
  return { leftHandDb: -upperDb, velocity, endsDb: 0, thumbDb: 0, mistakes };
}

/** One to four places, three steps apart at least, the first and the last step spared. */
function slips({ steps }: Exercise, random: Random): readonly Mistake[] {
  const free = steps.slice(1, -1).map(({ step }) => step);
  const places: number[] = [];
  for (let wanted = 1 + random.integer(4); wanted > 0; wanted--) {
    const left = free.filter((step) => places.every((other) => Math.abs(other - step) >= 3));
    if (left.length > 0) places.push(random.pick(left));
  }
  return places.map((step): Mistake => {
    const { notes } = steps[step]!;
    const note = random.integer(notes.length);
    const keys = [-1, 0, 1].flatMap((offset) => steps[step + offset]!.notes.map(({ midi }) => midi));
    const { midi } = notes[note]!;
    const others = SLIPS_BY.map((semitones) => midi + semitones).filter((key) => !keys.includes(key));
    const kind = random.pick(['wrong', 'wrong', 'missed', 'slip'] as const);
    return kind === 'missed' || others.length === 0
      ? { kind: 'missed', step, note }
      : { kind, step, note, midi: random.pick(others) };
  });
}
