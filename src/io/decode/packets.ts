import type { InputAudioTrack } from 'mediabunny';
import { CONVERT, DecodeError } from './errors.ts';
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
    if (head === null) throw new DecodeError('damaged', `Its Opus header makes no sense. ${CONVERT}`);
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
  const what =
    codec === null
      ? 'a kind of sound that is not known here'
      : `${codec.toUpperCase()} sound, which cannot be decoded here`;
  throw new DecodeError('unsupported', `It holds ${what}. ${CONVERT}`);
}

/** A view of any kind of buffer; none: no bytes. */
export function bytesOf(source: AllowSharedBufferSource | undefined): Uint8Array {
  if (source === undefined) return new Uint8Array();
  return ArrayBuffer.isView(source)
    ? new Uint8Array(source.buffer, source.byteOffset, source.byteLength)
    : new Uint8Array(source);
}

/** "pcm-s24be" → its layout; null for what is no plain PCM. */
function pcmLayout(codec: string, channels: number): PcmLayout | null {
  const parts = /^pcm-([usf])(8|16|24|32|64)(be)?$/.exec(codec);
  if (parts === null) return null;
  const encoding = ({ u: 'unsigned', s: 'signed', f: 'float' } as const)[parts[1] as 'u' | 's' | 'f'];
  return { encoding, bytesPerSample: Number(parts[2]) / 8, littleEndian: parts[3] === undefined, channels };
}
