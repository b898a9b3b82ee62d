import { stretch } from './stretch.ts';

/** Plays one recording through the loudspeaker. One stretch at a time: a new one ends the last. */
export interface Playback {
  /** `speed` 0.5: half as fast at the same pitch. */
  play(fromSec: number, toSec?: number, speed?: number): void;
  stop(): void;
  /** place in the recording that sounds now; null: nothing does */
  positionSec(): number | null;
  /** Called whenever a stretch has been played to its end; not after `stop`. */
  onEnd(callback: () => void): void;
  close(): void;
}

interface Sound {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
}

interface Playing {
  readonly source: AudioBufferSourceNode;
  readonly fromSec: number;
  readonly toSec: number;
  readonly speed: number;
  readonly startedAtSec: number;
}

/** Rise and fall at the ends of a stretch, so that cutting into a sounding note does not click, seconds. */
const FADE_SEC = 0.005;

export function createPlayback(audio: Sound): Playback {
  const durationSec = (audio.channels[0]?.length ?? 0) / audio.sampleRateHz;
  const callbacks: (() => void)[] = [];
  let context: AudioContext | null = null;
  let playing: Playing | null = null;

  const stop = (): void => {
    const ended = playing;
    playing = null;
    ended?.source.stop();
  };

  return {
    play: (from, to = durationSec, speed = 1) => {
      stop();
      const fromSec = Math.min(Math.max(from, 0), durationSec);
      const toSec = Math.min(Math.max(to, fromSec), durationSec);
      const part = cut(audio, fromSec, toSec, speed);
      if (part === null) return callbacks.forEach((callback) => callback());
      // Opened by the first play, which a user asked for: browsers keep a context that opens by itself silent.
      context ??= new AudioContext();
      void context.resume();
      const buffer = context.createBuffer(part.length, part[0]!.length, audio.sampleRateHz);
      part.forEach((channel, i) => buffer.copyToChannel(channel, i));
      const source = new AudioBufferSourceNode(context, { buffer });
      const started: Playing = { source, fromSec, toSec, speed, startedAtSec: context.currentTime };
      source.connect(context.destination);
      source.addEventListener('ended', () => {
        if (playing !== started) return;
        playing = null;
        callbacks.forEach((callback) => callback());
      });
      source.start();
      playing = started;
    },
    stop,
    positionSec: () => {
      if (playing === null || context === null) return null;
      // What is heard now left the context some time ago.
      const sinceSec = context.currentTime - playing.startedAtSec - (context.outputLatency || 0);
      const { fromSec, toSec, speed } = playing;
      return Math.min(Math.max(fromSec + sinceSec * speed, fromSec), toSec);
    },
    onEnd: (callback) => void callbacks.push(callback),
    close: () => {
      stop();
      void context?.close();
      context = null;
    },
  };
}

/** A stretch of a recording at a speed, faded at its ends; null where it is empty. */
function cut({ channels, sampleRateHz }: Sound, fromSec: number, toSec: number, speed: number) {
  const from = Math.round(fromSec * sampleRateHz);
  const to = Math.round(toSec * sampleRateHz);
  if (channels.length === 0 || to <= from) return null;
  const part = stretch(
    channels.map((channel) => channel.slice(from, to)),
    sampleRateHz,
    speed,
  );
  const fade = Math.min(Math.round(FADE_SEC * sampleRateHz), Math.floor(part[0]!.length / 2));
  for (const channel of part) {
    for (let i = 0; i < fade; i++) {
      channel[i]! *= i / fade;
      channel[channel.length - 1 - i]! *= i / fade;
    }
  }
  return part;
}
