import {
  ALL_KEYS,
  buildExercise,
  copiesMeant,
  oneWay,
  practisedExercise,
  stretchIn,
} from '../../../src/engine/index.ts';
import type { Exercise, ExerciseChoice, Intention, Loudness, Rhythm } from '../../../src/engine/index.ts';
import { createRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import type { StudentKnobs } from '../../support/student/knobs.ts';
import { DB_PER_VELOCITY, perform } from '../../support/student/perform.ts';
import type { Performance } from '../../support/student/types.ts';
import { asPlayed } from './as-played.ts';
import type { AsPlayed } from './as-played.ts';
import { flawsOf, WORKS } from './works.ts';
import type { Flaw, Work } from './works.ts';

/** What somebody was to do, and did. */
export interface PractisedAttempt {
  readonly work: Work;
  /** null: done as it was meant */
  readonly flaw: Flaw | null;
  readonly choice: ExerciseChoice;
  readonly intention: Intention;
  readonly targetBpm: number;
  readonly played: AsPlayed;
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
    work.together
      ? (['together'] as const)
      : work.blocked || work.loudness
        ? (['left', 'right'] as const)
        : (['left', 'right', 'right', 'together'] as const),
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
    overlapMs: overlapMs(work, flaw, ioiMs, random),
    loudnessJitterDb: random.uniform(0.5, 1.2),
    mistakes: flaw === 'wrong-note' ? wrongInLastCopies(played, random) : STUDENT_DEFAULTS.mistakes,
  };
  const plain = shaped(
    perform(played, knobs, random.fork('student')),
    played,
    flaw === 'other-loudness' ? insteadOf(intention.loudness) : intention.loudness,
    random,
  );
  const performance = paused(plain, played, ioiMs / 1000, flaw, random);
  return {
    work,
    flaw,
    choice,
    intention,
    targetBpm,
    seed,
    played: asPlayed(performance.strokes, played, intention),
    performance,
  };
}

function intentionAt(
  { rhythm, steps, times, blocked, touch, loudness }: Work,
  whole: Exercise,
  random: Random,
): Intention {
  const { steps: all } = whole;
  const how = {
    times,
    rhythm,
    ...(blocked && { blocked }),
    ...(touch && { touch }),
    ...(loudness && { loudness }),
  };
  if (steps === null) return how;
  if (typeof steps === 'string') return { stretch: oneWay(whole, steps)!, ...how };
  const length = Math.min(all.length, steps[0] + random.integer(steps[1] - steps[0] + 1));
  const fromStep = random.integer(all.length - length + 1);
  return { stretch: { fromStep, toStep: fromStep + length - 1 }, times, rhythm };
}

/**
 * How notes are joined: staccato leaves some 60 % of the time to the next note silent, detached some 25 % (Bresin & Battel 2000, memory);
 * who does not do as asked plays legato, or where that was asked, detached.
 */
function overlapMs({ touch }: Work, flaw: Flaw | null, ioiMs: number, random: Random): number {
  const usual = random.uniform(-15, 40);
  if (touch === undefined) return usual;
  const other = touch === 'legato' ? 'detached' : 'legato';
  const played = flaw === 'other-touch' ? other : touch;
  const share = { legato: 0, detached: random.uniform(0.22, 0.35), staccato: random.uniform(0.5, 0.7) }[
    played
  ];
  return played === 'legato' ? random.uniform(0, 40) : -share * ioiMs;
}

/** Who does not do as asked plays all alike; of both hands the right one over the left, as is usual. */
const insteadOf = (loudness: Loudness | undefined): Loudness | undefined =>
  loudness === 'left-over-right' ? 'right-over-left' : undefined;

/** Blows as loud as was meant: 6 to 12 dB from first to last, accents of 3 to 6 dB, a hand 6 to 10 dB over the other. */
function shaped(
  plain: Performance,
  { steps }: Exercise,
  loudness: Loudness | undefined,
  random: Random,
): Performance {
  const [growthDb, accentDb, overDb] = [random.uniform(6, 12), random.uniform(3, 6), random.uniform(6, 10)];
  const every = Number(/\d/.exec(loudness ?? '')?.[0] ?? 0);
  const last = Math.max(...steps.map(({ copy }) => copy?.place ?? 0));
  const strokes = plain.strokes.map((stroke) => {
    const place = steps[stroke.step ?? 0]?.copy?.place ?? 0;
    const louderDb =
      loudness === 'growing'
        ? growthDb * (place / last - 0.5)
        : loudness === 'fading'
          ? growthDb * (0.5 - place / last)
          : loudness === 'left-over-right'
            ? (overDb / 2) * (stroke.hand === 'left' ? 1 : -1)
            : loudness === 'right-over-left'
              ? (overDb / 2) * (stroke.hand === 'right' ? 1 : -1)
              : every > 0 && place % every === 0
                ? accentDb
                : 0;
    return { ...stroke, velocity: Math.min(Math.max(stroke.velocity + louderDb / DB_PER_VELOCITY, 1), 127) };
  });
  return { ...plain, strokes };
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
