import { createLiveListener } from '../../src/engine/index.ts';
import type { LiveEvent, LiveOptions } from '../../src/engine/index.ts';

/** A note as the live ear told it over time. Times of telling: seconds of sound pushed, and the time the ear took for the block. */
export interface LiveNote {
  readonly id: number;
  /** the guess, and when it was told */
  readonly guess: { readonly midi: number; readonly timeSec: number; readonly toldSec: number } | null;
  /** what it came to; null: withdrawn, or left open */
  readonly final: { readonly midi: number; readonly timeSec: number; readonly toldSec: number } | null;
  readonly isWithdrawn: boolean;
}

/** What a live ear told of a sound, and what it cost. */
export interface Followed {
  readonly notes: readonly LiveNote[];
  readonly attempts: readonly {
    readonly startSec: number;
    readonly endSec: number;
    readonly firstSec: number;
    readonly notes: number;
    /** when its end was told */
    readonly toldSec: number;
  }[];
  readonly computeSec: number;
}

/** As the microphone hands it over. */
const BLOCK_SEC = 0.01;

/** One channel → everything the live ear tells of it, block by block. */
export function followLive(
  channel: Float32Array,
  sampleRateHz: number,
  options: Partial<LiveOptions> = {},
  onBlock: () => void = () => undefined,
): Followed {
  const ear = createLiveListener({ sampleRateHz, channels: 1 }, options);
  const notes = new Map<number, LiveNote>();
  const attempts: Followed['attempts'][number][] = [];
  let firstSec = 0;
  let computeMs = 0;
  const take = (event: LiveEvent, toldSec: number): void => {
    if (event.kind === 'struck') {
      const { id, midi, timeSec, final } = event;
      const before = notes.get(id) ?? { id, guess: null, final: null, isWithdrawn: false };
      notes.set(id, { ...before, [final ? 'final' : 'guess']: { midi, timeSec, toldSec } });
    }
    if (event.kind === 'withdrawn') notes.set(event.id, { ...notes.get(event.id)!, isWithdrawn: true });
    if (event.kind === 'started') firstSec = event.timeSec;
    if (event.kind === 'ended') attempts.push({ ...event, firstSec, toldSec });
  };
  const frames = Math.round(BLOCK_SEC * sampleRateHz);
  for (let at = 0; at < channel.length; at += frames) {
    // The processor's own time: the wall clock would count what else this machine is doing.
    const before = process.cpuUsage();
    const events = ear.push([channel.subarray(at, at + frames)]);
    const { user, system } = process.cpuUsage(before);
    const tookMs = (user + system) / 1000;
    computeMs += tookMs;
    const toldSec = Math.min(at + frames, channel.length) / sampleRateHz + tookMs / 1000;
    for (const event of events) take(event, toldSec);
    onBlock();
  }
  for (const event of ear.flush()) take(event, channel.length / sampleRateHz);
  return { notes: [...notes.values()], attempts, computeSec: computeMs / 1000 };
}
