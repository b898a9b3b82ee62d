import { cutPart, type Part, type Sound } from './part.ts';
import type { Attack } from './timemap.ts';

export { timeMap } from './timemap.ts';
export type { Anchor, Attack, TimeMap } from './timemap.ts';

export interface PlayOptions {
  /** 0.5: half as fast at the same pitch */
  readonly speed: number;
  /** again and again until `stop` */
  readonly loop: boolean;
  /** where the attacks of the recording are heard; what is struck stays whole at any speed */
  readonly attacks: readonly Attack[];
}
const PLAY_DEFAULTS: PlayOptions = { speed: 1, loop: false, attacks: [] };

/** Plays one recording through the loudspeaker. One stretch at a time: a new one ends the last. */
export interface Playback {
  /** Places are of the recording, whatever the speed and wherever its attacks are heard. */
  play(fromSec: number, toSec?: number, options?: Partial<PlayOptions>): void;
  stop(): void;
  /** place in the recording that sounds now; null: nothing does */
  positionSec(): number | null;
  /** Called whenever a stretch has been played to its end; not after `stop`. */
  onEnd(callback: () => void): void;
  close(): void;
}

interface Playing {
  readonly source: AudioBufferSourceNode;
  readonly part: Part;
  readonly toSec: number;
  readonly loop: boolean;
  readonly startedAtSec: number;
}

/** Silence between two rounds of a loop, seconds: a breath. */
const BREATH_SEC = 0.35;

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
    play: (from, to = durationSec, options = {}) => {
      stop();
      const { speed, loop, attacks } = { ...PLAY_DEFAULTS, ...options };
      const fromSec = Math.min(Math.max(from, 0), durationSec);
      const toSec = Math.min(Math.max(to, fromSec), durationSec);
      const part = cutPart(audio, fromSec, toSec, speed, attacks);
      if (part === null) return callbacks.forEach((callback) => callback());
      // Opened by the first play, which a user asked for: browsers keep a context that opens by itself silent.
      context ??= new AudioContext();
      void context.resume();
      const { channels } = part;
      const breath = loop ? Math.round(BREATH_SEC * audio.sampleRateHz) : 0;
      const buffer = context.createBuffer(channels.length, channels[0]!.length + breath, audio.sampleRateHz);
      channels.forEach((channel, i) => buffer.copyToChannel(channel, i));
      const source = new AudioBufferSourceNode(context, { buffer, loop });
      const started: Playing = { source, part, toSec, loop, startedAtSec: context.currentTime };
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
      const { part, loop, toSec } = playing;
      const round = part.channels[0]!.length / audio.sampleRateHz + BREATH_SEC;
      return Math.min(part.map.toRecording(Math.max(0, loop ? sinceSec % round : sinceSec)), toSec);
    },
    onEnd: (callback) => void callbacks.push(callback),
    close: () => {
      stop();
      void context?.close();
      context = null;
    },
  };
}
