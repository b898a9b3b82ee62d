import { describe, expect, it } from 'vitest';
import { decodeFile } from '../../../src/io/decode/index.ts';
import { mpegFrameAt } from '../../../src/io/decode/mpeg-frames.ts';
import { sample } from './reference.ts';

/** Samples in a frame of layer III at 32, 44.1 and 48 kHz (ISO/IEC 11172-3, 2.4.2.1). */
const FRAME_SAMPLES = 1152;
/** More than is handed to the decoder at a time. */
const LONG = 400;

/** Whole frames of a file, without tags. */
function framesOf(file: string): readonly Uint8Array[] {
  const bytes = new Uint8Array(sample(file));
  const frames: Uint8Array[] = [];
  for (let at = 0; at < bytes.length;) {
    const frame = mpegFrameAt(bytes, at);
    if (frame === null || at + frame.bytes > bytes.length) at++;
    else {
      frames.push(bytes.subarray(at, at + frame.bytes));
      at += frame.bytes;
    }
  }
  return frames;
}
const joined = (parts: readonly Uint8Array[]): ArrayBuffer => new Uint8Array(Buffer.concat(parts)).buffer;
const MONO = framesOf('mp3-mono-no-header.mp3');
const long = Array.from({ length: LONG }, (_, at) => MONO[at % MONO.length]!);

/** What is handed on block by block. */
async function taken(bytes: ArrayBuffer, maxFrames = 1e9) {
  const blocks: { samples: number; channels: number; share: number }[] = [];
  const { remarks } = await decodeFile(bytes, 'x.mp3', {
    maxFrames,
    take: (channels, _rate, share) =>
      void blocks.push({ samples: channels[0]!.length, channels: channels.length, share }),
  });
  return { blocks, remarks, samples: blocks.reduce((sum, block) => sum + block.samples, 0) };
}

describe('a long MP3', () => {
  it('gives every frame, piece by piece, and tells how far it is', async () => {
    const bytes = joined(long);
    expect(bytes.byteLength).toBeGreaterThan(2 * 32_768);
    const { blocks, samples, remarks } = await taken(bytes);
    expect(samples).toBe(LONG * FRAME_SAMPLES);
    expect(remarks).toEqual([]);
    // As many pieces as there are 32 KB in it, and the rest.
    expect(blocks).toHaveLength(Math.ceil(bytes.byteLength / 32_768));
    const shares = blocks.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    // A piece ends with the frame that goes beyond 32 KB.
    const first = shares[0]! * bytes.byteLength;
    expect(first).toBeGreaterThanOrEqual(32_768);
    expect(first).toBeLessThan(32_768 + 2000);
    expect(new Set(blocks.map(({ channels }) => channels))).toEqual(new Set([1]));
  });

  it('is left early where no more is wanted', async () => {
    const { blocks, samples, remarks } = await taken(joined(long), 10 * FRAME_SAMPLES);
    expect(samples).toBe(10 * FRAME_SAMPLES);
    expect(blocks).toHaveLength(1);
    expect(remarks).toMatchObject([{ notice: 'cut-at' }]);
  });

  it('loses nothing by what lies between its frames', async () => {
    const tag = new Uint8Array(1000).fill(0x20);
    const parts = [tag, ...long.slice(0, 20), tag, ...long.slice(20, 40), tag];
    const { samples, blocks } = await taken(joined(parts));
    expect(samples).toBe(40 * FRAME_SAMPLES);
    expect(blocks).toHaveLength(2);
  });

  it('leaves out a frame that is cut short, and frames of another rate', async () => {
    const cut = long[0]!.subarray(0, long[0]!.length - 1);
    expect((await taken(joined([...long.slice(0, 12), cut]))).samples).toBe(12 * FRAME_SAMPLES);
    // The same frame said to be of 48 kHz: bits 2 and 3 of its third byte.
    const other = Uint8Array.from(long[0]!);
    other[2] = (other[2]! & ~0b1100) | 0b0100;
    const { samples } = await taken(joined([...long.slice(0, 12), other, ...long.slice(12, 24)]));
    expect(samples).toBe(24 * FRAME_SAMPLES);
  });

  it('has two channels where its frames have', async () => {
    const { blocks } = await taken(joined(framesOf('mp3-stereo.mp3')));
    expect(new Set(blocks.map(({ channels }) => channels))).toEqual(new Set([2]));
  });

  it('without one whole frame is damaged', async () => {
    await expect(taken(joined([MONO[0]!.subarray(0, 100)]))).rejects.toThrow(/damaged|cut short/);
  });
});
