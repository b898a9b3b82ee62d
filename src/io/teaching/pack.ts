import type { AudioInput } from '../../engine/index.ts';
import { encodeWav } from '../exchange/index.ts';
import type { SoundFile } from '../review/types.ts';

/** Sound written between two turns of the page, frames: some milliseconds of work. */
const PIECE_FRAMES = 240_000;
/** Where a WAV as `encodeWav` writes it says its lengths, and where its samples begin (tests/io/exchange). */
const RIFF_SIZE_AT = 4;
const DATA_SIZE_AT = 40;
const HEADER_BYTES = 44;

/** Sound → how it is kept: a WAV of 16 bits, written in pieces, so that the page stays quick. */
export async function packSound({ channels, sampleRateHz }: AudioInput): Promise<SoundFile> {
  const frames = channels[0]?.length ?? 0;
  const file = new Uint8Array(HEADER_BYTES + frames * channels.length * 2);
  file.set(new Uint8Array(encodeWav({ channels: channels.map(() => new Float32Array()), sampleRateHz })));
  const view = new DataView(file.buffer);
  view.setUint32(RIFF_SIZE_AT, file.length - 8, true);
  view.setUint32(DATA_SIZE_AT, file.length - HEADER_BYTES, true);
  for (let from = 0; from < frames; from += PIECE_FRAMES) {
    const piece = channels.map((channel) => channel.subarray(from, from + PIECE_FRAMES));
    const written = new Uint8Array(encodeWav({ channels: piece, sampleRateHz }), HEADER_BYTES);
    file.set(written, HEADER_BYTES + from * channels.length * 2);
    if (from + PIECE_FRAMES < frames) await new Promise((resolve) => setTimeout(resolve, 0));
  }
  return { bytes: file, mime: 'audio/wav' };
}
