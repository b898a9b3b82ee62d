import { DecodeError } from './errors.ts';
import { oggPages } from './ogg-pages.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

type Decode = (bytes: Uint8Array, limits: DecodeLimits) => Promise<DecodedAudio>;

/** First bytes of the first packet of a stream: Opus (RFC 7845, 5.1), Vorbis (Vorbis I, 4.2.1), FLAC (RFC 9639, 10.1). */
const CODECS: readonly { readonly head: string; readonly load: () => Promise<Decode> }[] = [
  { head: 'OpusHead', load: async () => (await import('./opus.ts')).decode },
  { head: '\x01vorbis', load: async () => (await import('./vorbis.ts')).decode },
  { head: '\x7fFLAC', load: async () => (await import('./flac.ts')).decodeInOgg },
];

/** Ogg (RFC 3533) → sound, whichever codec its first sound stream has. */
export async function decode(bytes: Uint8Array, limits: DecodeLimits): Promise<DecodedAudio> {
  const heads: string[] = [];
  for (const page of oggPages(bytes)) {
    if (!page.isFirst) break;
    heads.push(String.fromCharCode(...page.body.subarray(0, 8)));
  }
  const codec = CODECS.find(({ head }) => heads.some((start) => start.startsWith(head)));
  if (codec === undefined) {
    throw new DecodeError('unsupported', { trouble: 'ogg-without-sound' });
  }
  const decodeCodec = await codec.load();
  return decodeCodec(bytes, limits);
}
