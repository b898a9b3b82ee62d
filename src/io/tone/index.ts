import { clickSamples } from '../pulse/click.ts';
import type { Playback } from '../playback/index.ts';
import { addTone, type Tone } from './string-tone.ts';

export type { Tone } from './string-tone.ts';

/** Sounds notes that nobody played, to show how something goes. One passage at a time: a new one ends the last. */
export interface Tones {
  /**
   * `onEnd`: called once, when the passage has been played to its end or was ended by another or by `stop`. `clicksSec`: when it is
   * counted in, the first of them brighter.
   */
  play(tones: readonly Tone[], onEnd: () => void, clicksSec?: readonly number[]): void;
  stop(): void;
}

const SAMPLE_RATE_HZ = 44_100;
/** What rings on after the last key is let go, seconds. */
const TAIL_SEC = 0.25;
const PEAK = 0.5;
/** A forte uses what is left of full scale. */
const MOST_DB = 6;

/** Tones → their sound: at most half of full scale where the loudest is a middling blow, and louder or softer as it is. */
export function renderTones(
  tones: readonly Tone[],
  clicksSec: readonly number[] = [],
): {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
} {
  const endSec = Math.max(0, ...tones.map(({ timeSec, holdSec }) => timeSec + holdSec)) + TAIL_SEC;
  const sound = new Float32Array(Math.ceil(endSec * SAMPLE_RATE_HZ));
  for (const tone of tones) addTone(sound, tone, SAMPLE_RATE_HZ);
  const peak = sound.reduce((most, value) => Math.max(most, Math.abs(value)), 1e-9);
  const loudestDb = Math.max(-MOST_DB, ...tones.map(({ louderDb = 0 }) => louderDb));
  const gain = (PEAK * 10 ** (Math.min(loudestDb, MOST_DB) / 20)) / peak;
  const heard = sound.map((value) => value * gain);
  clicksSec.forEach((sec, at) => addClick(heard, sec, at === 0));
  return { channels: [heard], sampleRateHz: SAMPLE_RATE_HZ };
}

function addClick(into: Float32Array, sec: number, first: boolean): void {
  const from = Math.round(sec * SAMPLE_RATE_HZ);
  clickSamples(SAMPLE_RATE_HZ, first).forEach((value, index) => {
    const at = from + index;
    if (at < into.length) into[at]! += value;
  });
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
    play: (tones, onEnd, clicksSec) => {
      stop();
      const playback = open(renderTones(tones, clicksSec));
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
