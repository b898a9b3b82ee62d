import {
  ALL_KEYS,
  buildExercise,
  copiesMeant,
  oneWay,
  practisedExercise,
  stretchIn,
} from '../../../src/engine/index.ts';
import type { Exercise, ExerciseChoice, Form, Intention, Rhythm } from '../../../src/engine/index.ts';
import { createRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import type { StudentKnobs } from '../../support/student/knobs.ts';
import { perform } from '../../support/student/perform.ts';
import type { Performance } from '../../support/student/types.ts';

/** Something to practise, of which forms, how long a stretch (steps, or one way; null: the whole), how often. */
export interface Work {
  readonly name: string;
  readonly rhythm: Rhythm;
  readonly forms: readonly Form[];
  readonly steps: readonly [number, number] | 'up' | 'down' | null;
  readonly times: number;
  /** hand positions struck as chords */
  readonly blocked?: true;
}

const LINES: readonly Form[] = ['arpeggio', 'scale'];

export const WORKS: readonly Work[] = [
  { name: 'stretch, three times', rhythm: 'even', forms: LINES, steps: [4, 9], times: 3 },
  { name: 'stretch, five times', rhythm: 'even', forms: LINES, steps: [3, 6], times: 5 },
  { name: 'chords, three times', rhythm: 'even', forms: ['triads', 'progression'], steps: [3, 4], times: 3 },
  { name: 'long–short, twice', rhythm: 'long-short', forms: LINES, steps: [6, 12], times: 2 },
  { name: 'short–long, twice', rhythm: 'short-long', forms: LINES, steps: [6, 12], times: 2 },
  { name: 'the whole long–short', rhythm: 'long-short', forms: LINES, steps: null, times: 1 },
  { name: 'groups of two', rhythm: 'groups-of-2', forms: LINES, steps: [8, 13], times: 2 },
  { name: 'groups of three', rhythm: 'groups-of-3', forms: LINES, steps: [9, 13], times: 2 },
  { name: 'groups of four', rhythm: 'groups-of-4', forms: ['scale'], steps: null, times: 1 },
  { name: 'groups of six', rhythm: 'groups-of-6', forms: ['scale'], steps: null, times: 1 },
  { name: 'stop before crossings', rhythm: 'stop-before-crossings', forms: LINES, steps: null, times: 1 },
  { name: 'stop on each beat', rhythm: 'stop-on-each-beat', forms: LINES, steps: [8, 13], times: 3 },
  {
    name: 'chords one by one',
    rhythm: 'stop-on-each-step',
    forms: ['triads', 'progression'],
    steps: [3, 4],
    times: 3,
  },
  {
    name: 'chords prepared silently',
    rhythm: 'prepared-silently',
    forms: ['triads', 'progression'],
    steps: null,
    times: 2,
  },
  { name: 'one note more', rhythm: 'one-note-more', forms: LINES, steps: [4, 7], times: 2 },
  {
    name: 'positions of an arpeggio',
    rhythm: 'even',
    forms: ['arpeggio'],
    steps: null,
    times: 2,
    blocked: true,
  },
  { name: 'positions of a scale', rhythm: 'even', forms: ['scale'], steps: null, times: 1, blocked: true },
  { name: 'the way up', rhythm: 'even', forms: LINES, steps: 'up', times: 3 },
  { name: 'the way down', rhythm: 'even', forms: LINES, steps: 'down', times: 2 },
];

/** Ways of doing it that are not what was asked. */
export type Flaw = 'wrong-note' | 'too-few' | 'too-fast' | 'the-whole' | 'even-instead' | 'turned' | 'stop';

/** Which of them a work can be spoilt by. */
export function flawsOf({ rhythm, steps, times, blocked }: Work): readonly Flaw[] {
  const pairs = rhythm === 'long-short' || rhythm === 'short-long';
  const free = ['stop-on-each-step', 'prepared-silently', 'one-note-more'].includes(rhythm) || blocked;
  return [
    'wrong-note',
    ...(times > 1 ? (['too-few'] as const) : []),
    ...(Array.isArray(steps) && times > 1 && rhythm === 'even' ? (['the-whole'] as const) : []),
    ...(rhythm === 'even' && !blocked
      ? (['too-fast', 'stop'] as const)
      : free
        ? []
        : (['even-instead'] as const)),
    ...(pairs ? (['turned'] as const) : []),
  ];
}

/** What somebody was to do, and did. */
export interface PractisedAttempt {
  readonly work: Work;
  /** null: done as it was meant */
  readonly flaw: Flaw | null;
  readonly choice: ExerciseChoice;
  readonly intention: Intention;
  readonly targetBpm: number;
  /** long : short as played, of pairs */
  readonly longToShort: number;
  readonly performance: Performance;
  readonly seed: number;
}

/** Number → player at a work, always the same; `flaw`: in which of its ways it is spoilt. */
export function practisedAttempt(work: Work, index: number, flawed: boolean): PractisedAttempt {
  const seed = 7919 * (index + 1) + WORKS.indexOf(work) * 104_729 + (flawed ? 15 : 0);
  const random = createRandom(seed);
  const flaws = flawsOf(work);
  const flaw = flawed ? flaws[index % flaws.length]! : null;
  const form = random.pick(work.forms);
  const hands = random.pick(
    work.blocked ? (['left', 'right'] as const) : (['left', 'right', 'right', 'together'] as const),
  );
  const octaves = form === 'scale' || form === 'arpeggio' ? 2 : 1;
  const choice: ExerciseChoice = { key: random.pick(ALL_KEYS), form, hands, octaves };
  const whole = buildExercise(choice);
  const chords = form === 'triads' || form === 'progression' || work.blocked === true;
  const intention = intentionAt(work, whole, random);
  const stepsPerBeat = work.blocked ? 1 : 1 / (whole.steps[1]!.beat - whole.steps[0]!.beat);
  const notesPerSec = chords ? random.uniform(0.7, 1.2) : random.uniform(1.2, 3);
  const targetBpm = (60 * notesPerSec) / stepsPerBeat;
  const longToShort = random.uniform(1.9, 3.6);
  const played = exercisePlayed(choice, intention, flaw, longToShort, random);
  const bpm = targetBpm * (flaw === 'too-fast' ? random.uniform(1.5, 1.9) : random.uniform(0.92, 1.1));
  const ioiMs = 60_000 / bpm / stepsPerBeat;
  const evenMs = Math.hypot(10, 0.04 * ioiMs) / Math.SQRT2;
  const knobs: StudentKnobs = {
    ...STUDENT_DEFAULTS,
    bpm,
    jitterMs: evenMs * random.uniform(0.25, 0.6),
    chordSpreadMs: random.uniform(4, 25),
    handsApartMs:
      hands === 'together'
        ? { mean: random.uniform(-15, 10), sd: random.uniform(5, 10) }
        : STUDENT_DEFAULTS.handsApartMs,
    overlapMs: random.uniform(-15, 40),
    mistakes: flaw === 'wrong-note' ? wrongInLastCopies(played, random) : STUDENT_DEFAULTS.mistakes,
  };
  const plain = perform(played, knobs, random.fork('student'));
  const stepSec = ioiMs / 1000;
  return {
    work,
    flaw,
    choice,
    intention,
    targetBpm,
    seed,
    longToShort,
    performance: paused(plain, played, stepSec, flaw, random),
  };
}

function intentionAt({ rhythm, steps, times, blocked }: Work, whole: Exercise, random: Random): Intention {
  const { steps: all } = whole;
  if (steps === null) return { times, rhythm, ...(blocked && { blocked }) };
  if (typeof steps === 'string') return { stretch: oneWay(whole, steps)!, times, rhythm };
  const length = Math.min(all.length, steps[0] + random.integer(steps[1] - steps[0] + 1));
  const fromStep = random.integer(all.length - length + 1);
  return { stretch: { fromStep, toStep: fromStep + length - 1 }, times, rhythm };
}

/** How many copies of it are begun. */
export function begunIn({
  choice,
  intention,
  flaw,
}: Pick<PractisedAttempt, 'choice' | 'intention' | 'flaw'>): number {
  if (flaw === 'the-whole') return 0;
  const meant = copiesMeant(intention, stretchIn(buildExercise(choice), intention).length);
  const fewer = intention.rhythm === 'one-note-more' ? intention.times : 1;
  return flaw === 'too-few' ? meant - fewer : meant;
}

/** What is really played, written out. */
function exercisePlayed(
  choice: ExerciseChoice,
  intention: Intention,
  flaw: Flaw | null,
  longToShort: number,
  random: Random,
): Exercise {
  if (flaw === 'the-whole') return buildExercise(choice);
  const repeats = begunIn({ choice, intention, flaw });
  const size = Number(/\d/.exec(intention.rhythm)?.[0] ?? 1);
  const other: Rhythm = intention.rhythm === 'long-short' ? 'short-long' : 'long-short';
  const rhythm = flaw === 'even-instead' ? 'even' : flaw === 'turned' ? other : intention.rhythm;
  return practisedExercise(choice, {
    intention: { ...intention, rhythm },
    repeats,
    longToShort,
    heldPlace: random.chance(0.3) ? size - 1 : 0,
  });
}

/** A wrong key in each copy but the first, or in the only one. */
function wrongInLastCopies({ steps }: Exercise, random: Random): StudentKnobs['mistakes'] {
  const last = steps.at(-1)!.copy!.number;
  const spoilt = Array.from({ length: Math.max(1, last) }, (_, at) => (last === 0 ? 0 : at + 1));
  return spoilt.map((number) => {
    const copy = steps.filter((one) => one.copy!.number === number);
    const inside = copy.length < 3 ? copy.slice(-1) : copy.slice(1, -1);
    const { step, notes } = random.pick(inside);
    const { midi } = notes[0]!;
    const near = [-1, 0, 1].flatMap((by) => (steps[step + by]?.notes ?? []).map((note) => note.midi));
    const key = [midi + 1, midi - 1, midi + 2, midi - 2].find((one) => !near.includes(one))!;
    return { kind: 'wrong' as const, step, note: 0, midi: key };
  });
}

/** Where a pause is meant it lasts as long as it likes, and each copy has a tempo of its own; or a stop where none is meant. */
function paused(
  plain: Performance,
  { steps }: Exercise,
  stepSec: number,
  flaw: Flaw | null,
  random: Random,
): Performance {
  const later: number[] = [];
  let sumSec = 0;
  const stopAt =
    flaw === 'stop'
      ? steps.flatMap(({ step, pauseBefore }) =>
          step > 0 && !pauseBefore && (step % 3 === 0 || step === 2) ? [step] : [],
        )
      : [];
  for (const { step, pauseBefore } of steps) {
    if (pauseBefore === true) sumSec += stepSec * random.uniform(-0.2, 2);
    if (stopAt.includes(step)) sumSec += Math.max(8 * stepSec, 2.2);
    later.push(sumSec);
  }
  const strokes = plain.strokes.map((stroke) => {
    const bySec = later[stroke.step ?? 0] ?? 0;
    return { ...stroke, timeSec: stroke.timeSec + bySec, releaseSec: stroke.releaseSec + bySec };
  });
  return { ...plain, strokes, durationSec: plain.durationSec + sumSec };
}
