import { OggVorbisDecoder } from '@wasm-audio-decoders/ogg-vorbis';
import { inMemory } from './file-bytes.ts';
import { decodeStream } from './stream.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

/** Vorbis in Ogg → sound. */
export function decode(bytes: Uint8Array, limits: DecodeLimits): Promise<DecodedAudio> {
  return decodeStream(new OggVorbisDecoder(), inMemory(bytes), limits, 'Ogg');
}
