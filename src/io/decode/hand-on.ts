import type { DecodedAudio, TakeSound } from './types.ts';

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
