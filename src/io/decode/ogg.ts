import { DecodeError } from './errors.ts';
import { oggPages } from './ogg-pages.ts';
import type { DecodedAudio, DecodeLimits, Decoder } from './types.ts';

/** First bytes of the first packet of a stream: Opus (RFC 7845, 5.1), Vorbis (Vorbis I, 4.2.1), FLAC (RFC 9639, 10.1). */
const CODECS: readonly { readonly head: string; readonly load: () => Promise<Decoder> }[] = [
  { head: 'OpusHead', load: () => import('./opus.ts') },
  { head: '\x01vorbis', load: () => import('./vorbis.ts') },
  { head: '\x7fFLAC', load: () => import('./flac.ts') },
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
  return (await codec.load()).decode(bytes, limits);
}
