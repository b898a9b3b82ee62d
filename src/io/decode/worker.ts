import { BLOCK_DEFAULTS, DecodeError, LARGEST_FILE_BYTES, decodeBlocks } from './index.ts';
import type { DecodedAudio, DecodedFacts, TakeSound } from './types.ts';

/**
 * The same as decodeInBrowser, for a worker, block by block. What decodeFile does not know goes to the decoders that workers
 * have, then to the page's own (`byPage`). `open` gives a taker for each of them: the one before may have got some sound.
 */
export async function decodeInWorker(
  file: Blob,
  name: string,
  open: () => TakeSound,
  byPage: () => Promise<DecodedAudio | null>,
): Promise<DecodedFacts> {
  try {
    return await decodeBlocks(file, name, open());
  } catch (error) {
    if (!(error instanceof DecodeError) || error.kind === 'empty') throw error;
    const bytes = await file
      .slice(0, LARGEST_FILE_BYTES)
      .arrayBuffer()
      .catch(() => Promise.reject(error));
    const taken = await byWebCodecs(bytes, open());
    if (taken !== null) return taken;
    const whole = await byPage();
    if (whole === null) throw error;
    handOn(whole, open());
    return whole;
  }
}

async function byWebCodecs(bytes: ArrayBuffer, take: TakeSound): Promise<DecodedFacts | null> {
  const { decodeByWebCodecs } = await import('./web-codecs.ts');
  try {
    return await decodeByWebCodecs(new Uint8Array(bytes), { ...BLOCK_DEFAULTS, take }, 'browser');
  } catch {
    return null;
  }
}

/** Samples a channel at a time. */
const BLOCK_FRAMES = 1 << 16;

/** Sound that came whole from a decoder → its taker, in blocks. */
export function handOn({ channels, sampleRateHz }: DecodedAudio, take: TakeSound): void {
  const frames = channels[0]?.length ?? 0;
  for (let from = 0; from < frames; from += BLOCK_FRAMES) {
    const to = Math.min(from + BLOCK_FRAMES, frames);
    take(
      channels.map((channel) => channel.subarray(from, to)),
      sampleRateHz,
      to / frames,
    );
  }
}
