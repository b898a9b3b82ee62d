import type { InputAudioTrack } from 'mediabunny';
import { DecodeError } from './errors.ts';
import { OPUS_RATE_HZ, openOpus, readOpusHead } from './opus-packets.ts';
import { readPcm } from './pcm.ts';
import type { PcmLayout } from './pcm.ts';

/** A decoder of one track's packets. */
export interface PacketDecoder {
  readonly sampleRateHz: number;
  /** samples to drop at the start */
  readonly preSkip: number;
  /** one packet → one array a channel; empty where it cannot be decoded */
  decode(packet: Uint8Array): Float32Array[];
  free(): void;
}

/** Opens the decoder that a track's packets need; throws DecodeError where there is none. */
export async function openPackets(track: InputAudioTrack): Promise<PacketDecoder> {
  const codec = track.codec;
  const config = await track.getDecoderConfig();
  if (codec === 'opus') {
    const head = readOpusHead(bytesOf(config?.description));
    if (head === null) throw new DecodeError('damaged', { trouble: 'opus-header-senseless' });
    const { decode, free } = await openOpus(head);
    return { sampleRateHz: OPUS_RATE_HZ, preSkip: head.preSkip, decode, free };
  }
  const layout = pcmLayout(codec ?? '', track.numberOfChannels);
  if (layout !== null) {
    return {
      sampleRateHz: track.sampleRate,
      preSkip: 0,
      decode: (packet) => readPcm(packet, layout),
      free: () => undefined,
    };
  }
  const id = await track.getInternalCodecId();
  if (id === 'drms' || id === 'enca') {
    throw new DecodeError('unsupported', { trouble: 'sound-locked' });
  }
  const name = (typeof id === 'string' ? NAMES[id] : undefined) ?? codec?.toUpperCase();
  throw name === undefined
    ? new DecodeError('unsupported', { trouble: 'codec-unknown' })
    : new DecodeError('unsupported', { trouble: 'codec-other', codec: name });
}

/** Sample entries of MP4 and QuickTime (MP4 Registration Authority) and codecs of Matroska (RFC 9559) that cannot be read here. */
const NAMES: Readonly<Record<string, string>> = {
  alac: 'Apple Lossless',
  A_ALAC: 'Apple Lossless',
  samr: 'AMR',
  sawb: 'AMR',
  'ac-3': 'Dolby',
  'ec-3': 'Dolby',
  A_AC3: 'Dolby',
  A_EAC3: 'Dolby',
  dtsc: 'DTS',
  A_DTS: 'DTS',
  ima4: 'IMA ADPCM',
};

/** A view of any kind of buffer; none: no bytes. */
export function bytesOf(source: AllowSharedBufferSource | undefined): Uint8Array {
  if (source === undefined) return new Uint8Array();
  return ArrayBuffer.isView(source)
    ? new Uint8Array(source.buffer, source.byteOffset, source.byteLength)
    : new Uint8Array(source);
}

/** "pcm-s24be" → its layout; null for what is no plain PCM. */
function pcmLayout(codec: string, channels: number): PcmLayout | null {
  if (codec === 'ulaw' || codec === 'alaw') {
    const encoding = codec === 'ulaw' ? 'mu-law' : 'a-law';
    return { encoding, bytesPerSample: 1, littleEndian: true, channels };
  }
  const parts = /^pcm-([usf])(8|16|24|32|64)(be)?$/.exec(codec);
  if (parts === null) return null;
  const encoding = ({ u: 'unsigned', s: 'signed', f: 'float' } as const)[parts[1] as 'u' | 's' | 'f'];
  return { encoding, bytesPerSample: Number(parts[2]) / 8, littleEndian: parts[3] === undefined, channels };
}
