import { ALL_KEYS, buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { createRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';
import type { PianoName, RenderSpec, StudentKnobs } from '../../support/render.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import { perform } from '../../support/student/perform.ts';
import type { Performance } from '../../support/student/types.ts';
import { homeOf, shiftsOf } from '../attempts.ts';
import type { Scenario } from './scenarios.ts';
import { SCENARIOS } from './scenarios.ts';
import { SERIES } from './series.ts';

/** Where the sound of an attempt comes from: a sampled piano, or a list of notes with the ear's measured errors. */
export type Source = PianoName | 'notes';

/** One attempt as it is played, and those that the player made before it. */
export interface Played {
  readonly performance: Performance;
  readonly spec: RenderSpec;
}

export interface VerdictAttempt {
  readonly scenario: Scenario;
  readonly source: Source;
  readonly asked: ExerciseChoice;
  /** its time was shaped on purpose, or stands still somewhere */
  readonly shaped: boolean;
  /** oldest first; the last is the one judged */
  readonly played: readonly Played[];
}

const SPEED = { lines: [1.8, 6], chords: [0.7, 1.6] } as const;
/** Share of the weights, so that their sum is the number of attempts in one round. */
const ROUND: readonly Scenario[] = SCENARIOS.flatMap((scenario) =>
  Array.from({ length: scenario.weight }, () => scenario),
);

/** How many attempts make one round of all players, series left out. */
export const ROUND_LENGTH = ROUND.length;

/** Number → attempt, always the same; every third is played on `source`, the rest are lists of notes. */
export function verdictAttempt(index: number, source: Source): VerdictAttempt {
  const turn = Math.floor(index / ROUND.length);
  const at = index % ROUND.length;
  return attemptAs(ROUND[at]!, index, (at + turn) % 3 === 0 ? source : 'notes');
}

/** The same for the players of whom several attempts are judged together: lists of notes. */
export function seriesAttempt(index: number): VerdictAttempt {
  return attemptAs(SERIES[index % SERIES.length]!, 500_000 + index, 'notes');
}

function attemptAs(scenario: Scenario, index: number, source: Source): VerdictAttempt {
  const random = createRandom(77_003 * index + 41);
  const form = random.pick(scenario.forms);
  const hands = random.pick(scenario.hands);
  const octaves = form === 'scale' ? 1 + random.integer(3) : form === 'arpeggio' ? 2 + random.integer(2) : 1;
  const keys = scenario.minor ? ALL_KEYS.filter((key) => key.endsWith('minor')) : ALL_KEYS;
  const asked: ExerciseChoice = { key: random.pick(keys), form, hands, octaves };
  const chords = form === 'triads' || form === 'progression';
  const [least, most] = scenario.speed ?? SPEED[chords ? 'chords' : 'lines'];
  const notesPerSec = least * (most / least) ** random.uniform(0, 1);
  const seed = random.integer(2 ** 31);
  const home = { ...homeOf(random), keyLevelSdDb: random.uniform(1, 2.5) };
  const usual = playerOf(1000 / notesPerSec, hands === 'together', random);
  const count = scenario.series ?? 1;
  const played = Array.from({ length: count }, (_, attempt): Played => {
    const own = createRandom(seed + attempt);
    const playing = scenario.playing(own, 1000 / notesPerSec, attempt);
    const exercise = { ...asked, ...playing.plays };
    const written = buildExercise(exercise);
    const { steps } = written;
    const stepsPerBeat = (steps.length - 1) / (steps.at(-1)!.beat - steps[0]!.beat);
    const knobs: StudentKnobs = {
      ...STUDENT_DEFAULTS,
      ...usual,
      bpm: (60 * notesPerSec * (playing.faster ?? 1)) / stepsPerBeat,
      octaveShift: shiftsOf(steps).includes(0) ? 0 : (shiftsOf(steps)[0] ?? 0),
      ...playing.student,
    };
    const plain = perform(written, knobs, own.fork('student'));
    const performance = playing.shape?.(plain, written, own.fork('shape')) ?? plain;
    return {
      performance,
      spec: {
        seed,
        piano: source === 'test' ? 'test' : 'dev',
        exercise,
        student: knobs,
        home: { ...home, ...playing.home },
      },
    };
  });
  const shaped = scenario.playing(createRandom(seed), 1000 / notesPerSec, 0).shape !== undefined;
  return { scenario, source, asked, shaped, played };
}

/**
 * A player who is even for the tempo, connected or not as suits, with a hand that may lead a little and fingers of unlike
 * weight: nothing that a teacher would remark on. Scatter of intervals at most 0.6 of √(10² + (0.04 IOI)²) ms, of the hands at most
 * 0.6 of 30 ms, to which each hand's own adds.
 */
function playerOf(ioiMs: number, together: boolean, random: Random): Partial<StudentKnobs> {
  const evenMs = Math.hypot(10, 0.04 * ioiMs) / Math.SQRT2;
  const jitterMs = evenMs * random.uniform(0.25, 0.6);
  return {
    jitterMs: together ? Math.min(jitterMs, Math.sqrt(((0.6 * 30) ** 2 - 10 ** 2) / 2)) : jitterMs,
    driftPercent: random.uniform(-2, 2),
    chordSpreadMs: random.uniform(4, 25),
    handsApartMs: together
      ? { mean: random.uniform(-15, 10), sd: random.uniform(5, 10) }
      : STUDENT_DEFAULTS.handsApartMs,
    overlapMs: random.chance(0.7) ? random.uniform(-15, 50) : -ioiMs * random.uniform(0.1, 0.4),
    velocity: random.uniform(50, 90),
    loudnessJitterDb: random.uniform(0.6, 1.5),
    endsDb: random.uniform(-3, 0),
    thumbDb: random.uniform(-0.5, 1),
    innerDb: random.uniform(-3, 0),
    leftHandDb: random.uniform(-4, 4),
  };
}
