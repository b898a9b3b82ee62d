import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { decodeStream } from './stream.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

/** FLAC (RFC 9639), bare or in Ogg → sound. What is damaged inside is left out by the decoder, so that is told. */
export async function decode(bytes: Uint8Array, limits: DecodeLimits): Promise<DecodedAudio> {
  if (bytes[0] === 'O'.charCodeAt(0)) return decodeStream(new FLACDecoder(), bytes, limits, 'Ogg');
  return decodeStream(new FLACDecoder(), bytes, limits, 'FLAC', (gatherer) => {
    const whole = Math.min(totalFrames(bytes), limits.maxFrames);
    if (gatherer.frames >= whole) return;
    const { frames, sampleRateHz } = gatherer;
    gatherer.remark({
      notice: 'partly-read',
      readSec: frames / sampleRateHz,
      wholeSec: whole / sampleRateHz,
    });
  });
}

/** Length in samples by the stream's own account (RFC 9639, section 8.2: 36 bits, 13 bytes into STREAMINFO); 0: not said. */
function totalFrames(bytes: Uint8Array): number {
  const at = 'fLaC'.length + 4 + 13;
  if (bytes.length < at + 5) return 0;
  const view = new DataView(bytes.buffer, bytes.byteOffset + at, 5);
  return (view.getUint8(0) & 0x0f) * 2 ** 32 + view.getUint32(1);
}
