import { buildExercise } from '../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../src/engine/exercise/index.ts';
import { otherSound } from '../support/other-sounds.ts';
import type { OtherSound } from '../support/other-sounds.ts';
import { createRandom } from '../support/random.ts';
import type { Random } from '../support/random.ts';
import { renderPerformance, SAMPLE_RATE_HZ } from '../support/render.ts';
import type { Performance, PianoName } from '../support/render.ts';
import { STUDENT_DEFAULTS } from '../support/student/knobs.ts';
import { perform } from '../support/student/perform.ts';
import { NOODLING, noodle } from './desk-noodling.ts';
import { pinkNoise } from '../support/home/noise.ts';

/** What is hard about a sitting at the piano. */
export const EDGES = ['slow', 'hesitant', 'close', 'household', 'noodling', 'another', 'evening'] as const;
export type Edge = (typeof EDGES)[number];

/** One sound with what was played in it. */
export interface EdgeSitting {
  readonly edge: Edge;
  /** what is chosen on the stand */
  readonly chosen: ExerciseChoice;
  readonly channel: Float32Array;
  readonly sampleRateHz: number;
  /** onsets of each attempt; what was played beside them is none */
  readonly attempts: readonly (readonly number[])[];
}

const EXERCISES: readonly ExerciseChoice[] = [
  { key: 'D major', form: 'scale', hands: 'right', octaves: 1 },
  { key: 'A minor', form: 'arpeggio', hands: 'left', octaves: 1 },
  { key: 'G major', form: 'triads', hands: 'left', octaves: 1 },
  { key: 'F major', form: 'progression', hands: 'right', octaves: 1 },
  { key: 'E minor', form: 'broken-triads', hands: 'right', octaves: 1 },
  { key: 'C major', form: 'arpeggio', hands: 'together', octaves: 1 },
];
/** another than is chosen, exercise by exercise */
const OTHERS: readonly ExerciseChoice[] = [
  { key: 'A major', form: 'scale', hands: 'right', octaves: 1 },
  { key: 'C major', form: 'arpeggio', hands: 'left', octaves: 2 },
  { key: 'G major', form: 'arpeggio', hands: 'left', octaves: 1 },
  { key: 'F major', form: 'triads', hands: 'right', octaves: 1 },
  { key: 'E minor', form: 'scale', hands: 'right', octaves: 1 },
  { key: 'C major', form: 'scale', hands: 'together', octaves: 1 },
];
const HOUSEHOLD: readonly OtherSound[] = [
  'speech',
  'knocks',
  'speech',
  'pages',
  'dishes',
  'speech',
  'claps',
  'noise',
];
/** What an evening at home brings between one attempt and the next. */
const EVENING = ['talk', 'knocks', 'television', 'other playing'] as const;
const BED_DB = -62;

interface Part {
  readonly performance: Performance;
  /** of its first stroke */
  readonly atSec: number;
  readonly isAttempt: boolean;
}

/** The index-th sitting of its kind, always the same. */
export async function edgeSitting(edge: Edge, piano: PianoName, index: number): Promise<EdgeSitting> {
  const random = createRandom(7919 * index + 101 * EDGES.indexOf(edge) + (piano === 'dev' ? 1 : 2));
  const chosen = EXERCISES[index % EXERCISES.length]!;
  const parts: Part[] = [];
  const sounds: { readonly kind: OtherSound; readonly atSec: number; readonly sec: number }[] = [];
  let lastSec = 0;
  const play = (performance: Performance, afterSec: number, isAttempt: boolean): void => {
    parts.push({ performance, atSec: lastSec + afterSec, isAttempt });
    lastSec += afterSec + spanSec(performance);
  };
  const attempt = (bpm: number, choice = chosen): Performance =>
    perform(
      buildExercise(choice),
      { ...STUDENT_DEFAULTS, bpm, velocity: random.uniform(55, 85), jitterMs: 14 },
      random.fork(`attempt ${parts.length}`),
    );
  switch (edge) {
    case 'slow':
      for (let at = 0; at < 6; at++) {
        const notesAMinute = [40, 44, 48, 54, 60, 66][at]!;
        play(attempt(beatsAMinute(chosen, notesAMinute)), at === 0 ? 3 : random.uniform(5, 8), true);
      }
      break;
    case 'hesitant':
      for (let at = 0; at < 4; at++) {
        const usual = attempt(beatsAMinute(chosen, random.uniform(80, 200)));
        play(hesitating(usual, [3, 3, 5, 7][at]!, random), at === 0 ? 3 : random.uniform(4, 6), true);
      }
      break;
    case 'close':
      // From the last note of one to the first of the next.
      for (let at = 0; at < 4; at++)
        play(attempt(beatsAMinute(chosen, random.uniform(100, 240))), [3, 1, 1.6, 2.3][at]!, true);
      break;
    case 'household':
      for (let at = 0; at < 4; at++) {
        const sec = random.uniform(3, 7);
        sounds.push({ kind: HOUSEHOLD[(4 * index + at) % HOUSEHOLD.length]!, atSec: lastSec + 1.6, sec });
        play(attempt(beatsAMinute(chosen, random.uniform(60, 240))), sec + random.uniform(1.8, 3), true);
      }
      break;
    case 'noodling':
      for (let at = 0; at < 4; at++) {
        play(noodle(random.pick(NOODLING), chosen, random), random.uniform(2, 5), false);
        play(attempt(beatsAMinute(chosen, random.uniform(80, 240))), random.uniform(0.8, 2.5), true);
      }
      break;
    case 'evening':
      for (let at = 0; at < 4; at++) {
        const between = EVENING[(index + at) % EVENING.length]!;
        const sec = random.uniform(4, 8);
        const heard = soundsOf(between);
        if (between === 'other playing')
          play(noodle(random.pick(NOODLING), chosen, random), random.uniform(2, 5), false);
        sounds.push(...heard.map((kind) => ({ kind, atSec: lastSec + 1.6, sec })));
        const pauseSec = heard.length > 0 ? sec + random.uniform(1.8, 3) : random.uniform(0.8, 2.5);
        play(attempt(beatsAMinute(chosen, random.uniform(60, 240))), pauseSec, true);
      }
      break;
    case 'another': {
      const other = OTHERS[index % OTHERS.length]!;
      for (let at = 0; at < 3; at++)
        play(attempt(beatsAMinute(other, random.uniform(80, 240)), other), random.uniform(4, 6), true);
    }
  }
  const channel = await sounding(parts, sounds, lastSec + 4, piano, chosen, random);
  const attempts = parts
    .filter(({ isAttempt }) => isAttempt)
    .map(({ performance: { strokes }, atSec }) =>
      strokes.map(({ timeSec }) => timeSec - strokes[0]!.timeSec + atSec),
    );
  return { edge, chosen, channel, sampleRateHz: SAMPLE_RATE_HZ, attempts };
}

/** A television speaks and has music under it: tones that no piano makes. */
function soundsOf(between: (typeof EVENING)[number]): readonly OtherSound[] {
  switch (between) {
    case 'talk':
      return ['speech'];
    case 'knocks':
      return ['knocks'];
    case 'television':
      return ['speech', 'bowed tone'];
    case 'other playing':
      return [];
  }
}

function beatsAMinute(choice: ExerciseChoice, stepsAMinute: number): number {
  const { steps } = buildExercise(choice);
  return (stepsAMinute * (steps.at(-1)!.beat - steps[0]!.beat)) / (steps.length - 1);
}

function spanSec({ strokes }: Performance): number {
  return strokes.at(-1)!.timeSec - strokes[0]!.timeSec;
}

/** The same with a stop of so many seconds before one of its steps. */
function hesitating(performance: Performance, sec: number, random: Random): Performance {
  const steps = performance.strokes.map(({ step }) => step ?? 0);
  const at = 1 + random.integer(Math.max(...steps));
  const later = (timeSec: number, step: number | null): number => timeSec + ((step ?? 0) >= at ? sec : 0);
  return {
    ...performance,
    durationSec: performance.durationSec + sec,
    strokes: performance.strokes.map((stroke) => ({
      ...stroke,
      timeSec: later(stroke.timeSec, stroke.step),
      releaseSec: later(stroke.releaseSec, stroke.step),
    })),
  };
}

async function sounding(
  parts: readonly Part[],
  sounds: readonly { readonly kind: OtherSound; readonly atSec: number; readonly sec: number }[],
  seconds: number,
  piano: PianoName,
  exercise: ExerciseChoice,
  random: Random,
): Promise<Float32Array> {
  const channel = new Float32Array(Math.ceil(seconds * SAMPLE_RATE_HZ));
  const add = (sound: Float32Array, fromSec: number, gain: number): void => {
    const from = Math.round(fromSec * SAMPLE_RATE_HZ);
    for (let at = Math.max(0, -from); at < sound.length && from + at < channel.length; at++)
      channel[from + at]! += gain * sound[at]!;
  };
  const home = {
    tuningCents: random.uniform(-40, 12),
    room: { decaySec: 0.35, directDb: 4 },
    noises: [],
    peakDb: -9,
  };
  for (const { performance, atSec } of parts) {
    const seed = random.integer(2 ** 31);
    const { channels } = await renderPerformance(performance, { seed, piano, exercise, home });
    add(channels[0]!, atSec - performance.strokes[0]!.timeSec, 1);
  }
  for (const { kind, atSec, sec } of sounds) {
    const { channels } = otherSound(kind, sec, random.integer(2 ** 31));
    add(channels[0]!, atSec, 2 * 10 ** (random.uniform(-24, -9) / 20));
  }
  const bed = pinkNoise(channel.length, random);
  for (let at = 0; at < channel.length; at++) channel[at]! += 10 ** (BED_DB / 20) * bed[at]!;
  return channel;
}
