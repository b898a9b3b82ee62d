import type { Playback } from '../playback/index.ts';
import { addTone, type Tone } from './string-tone.ts';

export type { Tone } from './string-tone.ts';

/** Sounds notes that nobody played, to show how something goes. One passage at a time: a new one ends the last. */
export interface Tones {
  /** `onEnd`: called once, when the passage has been played to its end or was ended by another or by `stop`. */
  play(tones: readonly Tone[], onEnd: () => void): void;
  stop(): void;
}

const SAMPLE_RATE_HZ = 44_100;
/** What rings on after the last key is let go, seconds. */
const TAIL_SEC = 0.25;
const PEAK = 0.5;

/** Tones → their sound, at most half of full scale. */
export function renderTones(tones: readonly Tone[]): {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
} {
  const endSec = Math.max(0, ...tones.map(({ timeSec, holdSec }) => timeSec + holdSec)) + TAIL_SEC;
  const sound = new Float32Array(Math.ceil(endSec * SAMPLE_RATE_HZ));
  for (const tone of tones) addTone(sound, tone, SAMPLE_RATE_HZ);
  const peak = sound.reduce((most, value) => Math.max(most, Math.abs(value)), 1e-9);
  return { channels: [sound.map((value) => (value * PEAK) / peak)], sampleRateHz: SAMPLE_RATE_HZ };
}

/** `open`: how a sound is played, as `createPlayback` does. */
export function createTones(open: (sound: ReturnType<typeof renderTones>) => Playback): Tones {
  let playing: { readonly playback: Playback; readonly ended: () => void } | null = null;
  const stop = (): void => {
    const last = playing;
    playing = null;
    last?.playback.close();
    last?.ended();
  };
  return {
    play: (tones, onEnd) => {
      stop();
      const playback = open(renderTones(tones));
      const started = { playback, ended: onEnd };
      playing = started;
      playback.onEnd(() => {
        if (playing === started) stop();
      });
      playback.play(0);
    },
    stop,
  };
}
