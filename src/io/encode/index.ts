import type { AudioInput } from '../../engine/index.ts';
import type { SoundFile } from './kinds.ts';
import { oneChannel } from './one-channel.ts';
import { encodePcm, encodeWav } from './wav.ts';

export { encodePcm, encodeWav };
export { endingOf, isSoundOfKind, mimeOf } from './kinds.ts';
export type { SoundFile } from './kinds.ts';

/** Enough for playing; a third of that is enough for speech. */
const BITS_PER_SEC = 96_000;

/**
 * Sound → a small file: Opus in WebM by the browser's own encoder, and where there is none, or it fails, a WAV of 16 bits,
 * which is seven times as large. Our own decoder reads both. Also for spoken remarks.
 */
export async function encodeSound(sound: AudioInput, bitsPerSec = BITS_PER_SEC): Promise<SoundFile> {
  const channel = oneChannel(sound);
  const { sampleRateHz } = sound;
  try {
    // Loaded when it is needed: reports are read without it.
    const { canEncodeOpus, encodeOpus } = await import('./opus.ts');
    if (await canEncodeOpus(bitsPerSec)) {
      return { bytes: await encodeOpus(channel, sampleRateHz, bitsPerSec), mime: 'audio/webm' };
    }
  } catch {
    // No worse than a browser without the encoder.
  }
  return { bytes: new Uint8Array(encodeWav({ channels: [channel], sampleRateHz })), mime: 'audio/wav' };
}
