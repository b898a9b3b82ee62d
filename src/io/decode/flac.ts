import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { inMemory } from './file-bytes.ts';
import type { FileBytes } from './file-bytes.ts';
import { decodeStream } from './stream.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

/** FLAC (RFC 9639) → sound. What is damaged inside is left out by the decoder, so that is told. */
export async function decode(file: FileBytes, limits: DecodeLimits): Promise<DecodedAudio> {
  const head = await file.read(0, LENGTH_AT + 5);
  return decodeStream(new FLACDecoder(), file, limits, 'FLAC', (gatherer) => {
    const whole = Math.min(totalFrames(head), limits.maxFrames);
    if (gatherer.frames >= whole) return;
    const { frames, sampleRateHz } = gatherer;
    gatherer.remark({
      notice: 'partly-read',
      readSec: frames / sampleRateHz,
      wholeSec: whole / sampleRateHz,
    });
  });
}

/** FLAC in Ogg → sound. */
export function decodeInOgg(bytes: Uint8Array, limits: DecodeLimits): Promise<DecodedAudio> {
  return decodeStream(new FLACDecoder(), inMemory(bytes), limits, 'Ogg');
}

/** Where the stream tells its length in samples (RFC 9639, section 8.2: 36 bits, 13 bytes into STREAMINFO). */
const LENGTH_AT = 'fLaC'.length + 4 + 13;

/** First bytes → length in samples by the stream's own account; 0: not said. */
function totalFrames(head: Uint8Array): number {
  if (head.length < LENGTH_AT + 5) return 0;
  const view = new DataView(head.buffer, head.byteOffset + LENGTH_AT, 5);
  return (view.getUint8(0) & 0x0f) * 2 ** 32 + view.getUint32(1);
}
