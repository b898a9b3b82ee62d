import { pinkNoise } from './home/noise.ts';
import { otherSound } from './other-sounds.ts';
import type { OtherSound } from './other-sounds.ts';
import { createRandom } from './random.ts';
import { SAMPLE_RATE_HZ } from './render.ts';
import type { Rendered, TrueNote } from './render.ts';

/** What happens at a piano between two attempts, in turn. */
const BETWEEN: readonly OtherSound[] = [
  'speech',
  'knocks',
  'speech',
  'pages',
  'claps',
  'speech',
  'dishes',
  'noise',
];
/** its greatest peak, dB of full scale; the playing's own is about −6 */
const PEAK_DB = { least: -24, most: -6 } as const;
/** noise of the room under it all, RMS */
const BED_DB = -62;

/** A long sitting: attempts one after the other in one sound, with a household between them. */
export interface Session {
  readonly channel: Float32Array;
  readonly sampleRateHz: number;
  readonly attempts: readonly {
    /** the attempt's own sound, lead-in and lead-out included */
    readonly fromSec: number;
    readonly toSec: number;
    /** on the session's clock */
    readonly notes: readonly TrueNote[];
  }[];
}

/** Attempts of one channel, and how long the pauses between them are → one sound with its truth, always the same. */
export function joinSession(
  attempts: readonly Rendered[],
  spec: { readonly seed: number; readonly pauseSec: { readonly least: number; readonly most: number } },
): Session {
  const random = createRandom(spec.seed);
  const parts: Float32Array[] = [];
  const placed: Session['attempts'][number][] = [];
  let length = 0;
  const add = (part: Float32Array): void => {
    parts.push(part);
    length += part.length;
  };
  const pause = (index: number): void => {
    const seconds = random.uniform(spec.pauseSec.least, spec.pauseSec.most);
    add(new Float32Array(Math.round(random.uniform(0.1, 0.4) * seconds * SAMPLE_RATE_HZ)));
    const { channels } = otherSound(BETWEEN[index % BETWEEN.length]!, 0.6 * seconds, spec.seed + index);
    const gain = 2 * 10 ** (random.uniform(PEAK_DB.least, PEAK_DB.most) / 20);
    add(channels[0]!.map((value) => gain * value));
  };
  attempts.forEach(({ channels, truth }, index) => {
    pause(index);
    const fromSec = length / SAMPLE_RATE_HZ;
    add(channels[0]!);
    const notes = truth.notes.map((note) => ({ ...note, timeSec: note.timeSec + fromSec }));
    placed.push({ fromSec, toSec: length / SAMPLE_RATE_HZ, notes });
  });
  pause(attempts.length);

  const channel = new Float32Array(length);
  let at = 0;
  for (const part of parts) {
    channel.set(part, at);
    at += part.length;
  }
  const bed = pinkNoise(length, random.fork('bed'));
  for (let i = 0; i < length; i++) channel[i]! += 10 ** (BED_DB / 20) * bed[i]!;
  return { channel, sampleRateHz: SAMPLE_RATE_HZ, attempts: placed };
}
