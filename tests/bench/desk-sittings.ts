import type { ExerciseChoice } from '../../src/engine/exercise/index.ts';
import type { AudioInput, Heard } from '../../src/engine/index.ts';
import { pinkNoise } from '../support/home/noise.ts';
import { otherSound } from '../support/other-sounds.ts';
import type { Random } from '../support/random.ts';
import { renderPerformance, SAMPLE_RATE_HZ } from '../support/render.ts';
import type { HomeKnobs, Performance, PianoName } from '../support/render.ts';
import { homeOf } from './attempts.ts';
import { chanceFor, deskAttempt, deskExercise } from './desk-attempts.ts';
import { NOODLING, noodle } from './desk-noodling.ts';
import { heardCached } from './heard-cached.ts';

/** Something played in a sitting. */
export interface Played {
  /** null: no exercise */
  readonly exercise: ExerciseChoice | null;
  readonly octaveShift: number;
  /** every stroke, on the sitting's clock */
  readonly strokesSec: readonly number[];
  /** how long after the stroke before it, of whatever was played, it began; Infinity for the first */
  readonly afterSec: number;
}

/** A long recording: attempts, with talk and other playing between them. */
export interface Sitting {
  readonly played: readonly Played[];
  readonly heard: Heard;
}

type Between = 'short pause' | 'long pause' | 'again at once' | 'talk' | 'noodling' | 'talk and noodling';
const BETWEEN: readonly Between[] = [
  'short pause',
  'short pause',
  'long pause',
  'again at once',
  'talk',
  'talk',
  'noodling',
  'noodling',
  'noodling',
  'talk and noodling',
];
const BED_DB = -60;

/** Anything with its place in the sitting. */
interface Part {
  readonly performance: Performance;
  readonly fromSec: number;
}
interface Talk {
  readonly fromSec: number;
  readonly lengthSec: number;
}
interface Plan {
  readonly played: readonly Played[];
  readonly parts: readonly Part[];
  readonly talks: readonly Talk[];
  readonly durationSec: number;
}

/** The index-th sitting at a piano, heard. */
export async function sittingAt(piano: PianoName, index: number): Promise<Sitting> {
  const random = chanceFor(`sitting ${piano}`, index);
  const plan = planned(random, index);
  // Which key it was on a piano far from its pitch is another question: bench:desk tells it by itself.
  const home = { ...homeOf(random), tuningCents: random.uniform(-55, 12), noises: [], peakDb: -9 };
  const heard = await heardCached([plan, home, piano], () => sounding(plan, home, piano, index));
  return { played: plan.played, heard };
}

function planned(random: Random, index: number): Plan {
  const played: Played[] = [];
  const parts: Part[] = [];
  const talks: Talk[] = [];
  let lastSec = random.uniform(0, 1);
  const play = (
    performance: Performance,
    afterSec: number,
    what: Pick<Played, 'exercise' | 'octaveShift'>,
  ): void => {
    const fromSec = lastSec + afterSec - performance.strokes[0]!.timeSec;
    const strokesSec = performance.strokes.map(({ timeSec }) => timeSec + fromSec);
    parts.push({ performance, fromSec });
    played.push({ ...what, strokesSec, afterSec: played.length === 0 ? Infinity : afterSec });
    lastSec = strokesSec.at(-1)!;
  };
  const idle = (seconds: number, withTalk: boolean): void => {
    if (withTalk) talks.push({ fromSec: lastSec + 0.15 * seconds, lengthSec: 0.7 * seconds });
    lastSec += seconds;
  };
  const attempts = 3 + random.integer(10);
  let exercise = deskExercise(17 * index, random);
  for (let at = 0; at < attempts; at++) {
    const between = at === 0 ? 'talk' : random.pick(BETWEEN);
    if (between !== 'again at once' && random.chance(0.6)) exercise = deskExercise(17 * index + at, random);
    const course = random.chance(0.4) ? 'mistakes' : 'clean';
    const attempt = deskAttempt(exercise, course, random);
    let afterSec = random.uniform(1, 2);
    if (between === 'long pause') afterSec = random.uniform(2, 15);
    if (between === 'again at once') afterSec = usualGapSec(attempt.performance);
    if (between.startsWith('talk')) idle(random.uniform(3, 12), true);
    if (between.endsWith('noodling')) {
      const noodling = noodle(random.pick(NOODLING), exercise, random);
      play(noodling, random.uniform(0.7, 2), { exercise: null, octaveShift: 0 });
      afterSec = random.uniform(0.7, 2);
    }
    play(attempt.performance, afterSec, attempt);
  }
  idle(random.uniform(1, 20), random.chance(0.5));
  return { played, parts, talks, durationSec: lastSec + 2 };
}

/** From one moment of it to the next, as most are. */
function usualGapSec({ strokes }: Performance): number {
  const gaps = strokes.slice(1).map(({ timeSec }, at) => timeSec - strokes[at]!.timeSec);
  const apart = gaps.filter((gap) => gap > 0.1).sort((a, b) => a - b);
  return apart[apart.length >> 1] ?? 0.5;
}

/** All of it in one sound, over the quiet noise of a room. */
async function sounding(
  plan: Plan,
  home: Partial<HomeKnobs>,
  piano: PianoName,
  seed: number,
): Promise<AudioInput> {
  const channel = new Float32Array(Math.ceil(plan.durationSec * SAMPLE_RATE_HZ));
  const add = (sound: Float32Array, fromSec: number, gain: number): void => {
    const from = Math.round(fromSec * SAMPLE_RATE_HZ);
    for (let at = Math.max(0, -from); at < sound.length && from + at < channel.length; at++)
      channel[from + at]! += gain * sound[at]!;
  };
  for (const { performance, fromSec } of plan.parts) {
    const exercise = deskExercise(0, chanceFor('nothing', 0));
    const { channels } = await renderPerformance(performance, { seed, piano, exercise, home });
    add(channels[0]!, fromSec, 1);
  }
  const random = chanceFor(`talk ${piano}`, seed);
  for (const { fromSec, lengthSec } of plan.talks) {
    const { channels } = otherSound('speech', lengthSec, random.integer(2 ** 31));
    add(channels[0]!, fromSec, 2 * 10 ** (random.uniform(-26, -10) / 20));
  }
  const bed = pinkNoise(channel.length, random);
  for (let at = 0; at < channel.length; at++) channel[at]! += 10 ** (BED_DB / 20) * bed[at]!;
  return { channels: [channel], sampleRateHz: SAMPLE_RATE_HZ };
}
