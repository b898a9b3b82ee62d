import type { Expected, LiveEvent, LiveOptions, OwnSound, PianoProfile } from '../../../engine/index.ts';
import type { Trouble } from '../../../io/troubles/index.ts';
import type { LiveListening } from '../../../io/analysis/index.ts';
import type { LiveMicrophone, MicrophoneTrouble, Recording } from '../../../io/microphone/index.ts';

/** An open microphone with the live ear behind it. Seconds are of the microphone's sound, from its first sample. */
export interface LiveMicrophoneEar {
  readonly deviceLabel: string;
  readonly sampleRateHz: number;
  /** end of the sound that has come in */
  nowSec(): number;
  /** A moment by the page's clock, ms → where in the sound it comes in; the microphone's own delay is not known, and left out. */
  secAt(pageMs: number): number;
  /** Everything from here on is to be kept; null: no longer. */
  keepFrom(sec: number | null): void;
  /** A stretch of the sound, as far as it is kept. */
  take(startSec: number, endSec: number): Recording;
  mute(sound: OwnSound): void;
  /** From here on: this piano. */
  usePiano(piano: PianoProfile): void;
  /** From here on this is to be played. */
  expect(expected: Expected): void;
  /** Goes on after the device's sleep; to be called by a touch. */
  resume(): Promise<void>;
  /** Hears out what is open (an attempt under way is ended), then lets the microphone go. */
  stop(): Promise<void>;
}

/** What the ear tells. */
export interface LiveCallbacks {
  readonly onEvent: (event: LiveEvent) => void;
  readonly onTrouble: (trouble: MicrophoneTrouble) => void;
  /** the listening failed, a fault of ours */
  readonly onFailure: (trouble: Trouble) => void;
}

/** By how much the least delay of a block may grow again, seconds a second: clocks of sound and page drift apart. */
const DRIFT = 1e-4;

/** Ties a microphone to a live ear: each block goes to it as it comes. */
export function openEar(
  microphone: LiveMicrophone,
  openLiveListener: (sampleRateHz: number, options: Partial<LiveOptions>) => LiveListening,
  options: Partial<LiveOptions>,
  callbacks: LiveCallbacks,
): LiveMicrophoneEar {
  const { sampleRateHz } = microphone;
  const live = openLiveListener(sampleRateHz, options);
  /** page clock less sound, seconds: of the blocks that came soonest */
  let offsetSec = Infinity;
  const leaves = [
    microphone.onBlock((channels, firstSample) => {
      const frames = channels[0]?.length ?? 0;
      const behindSec = performance.now() / 1000 - (firstSample + frames) / sampleRateHz;
      offsetSec = Math.min(offsetSec + (DRIFT * frames) / sampleRateHz, behindSec);
      live.push(channels);
    }),
    microphone.onTrouble(callbacks.onTrouble),
  ];
  live.onEvent(callbacks.onEvent);
  live.onFailure(callbacks.onFailure);
  return {
    deviceLabel: microphone.deviceLabel,
    sampleRateHz,
    nowSec: () => microphone.nowSec(),
    secAt: (pageMs) => pageMs / 1000 - offsetSec,
    keepFrom: (sec) => microphone.keepFrom(sec),
    take: (startSec, endSec) => microphone.take(startSec, endSec),
    mute: (sound) => live.mute(sound),
    usePiano: (piano) => live.usePiano(piano),
    expect: (expected) => live.expect(expected),
    resume: () => microphone.resume(),
    stop: async () => {
      for (const leave of leaves) leave();
      await live.stop();
      microphone.close();
    },
  };
}
