export type * from './types.ts';
import type { AudioInput, Heard, PlayedNote } from './types.ts';

/** A listening in progress. Blocks may have any length; batch = stream, to the last bit. */
export interface Listener {
  /** one Float32Array a channel, all of one length */
  push(block: readonly Float32Array[]): void;
  /** notes decided so far, in order of time; may still gain releases */
  notesSoFar(): readonly PlayedNote[];
  finish(): Heard;
}

/** Opens a listening at the sound's own sample rate. */
export function createListener(options: {
  readonly sampleRateHz: number;
  readonly channels: number;
}): Listener {
  throw new Error(String(options.sampleRateHz));
}

/** A whole recording → what was heard in it. */
export function listen(audio: AudioInput): Heard {
  const listener = createListener({ sampleRateHz: audio.sampleRateHz, channels: audio.channels.length });
  listener.push(audio.channels);
  return listener.finish();
}
