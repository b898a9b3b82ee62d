import { OpusDecoder } from 'opus-decoder';
import { DecodeError } from './errors.ts';

/** Opus decodes to 48 kHz whatever it was made from (RFC 7845, section 5.1, "input sample rate"). */
export const OPUS_RATE_HZ = 48_000;

/** The identification header (RFC 7845, section 5.1). */
export interface OpusHead {
  readonly channels: number;
  /** samples to drop at the start */
  readonly preSkip: number;
  readonly streamCount: number;
  readonly coupledStreamCount: number;
  /** for each channel the decoded channel that feeds it */
  readonly mapping: readonly number[];
}

/** Packets in, blocks of one array a channel out. */
export interface OpusPacketDecoder {
  decode(packet: Uint8Array): Float32Array[];
  free(): void;
}

/** Header bytes → what they say; null where they are no Opus header. */
export function readOpusHead(bytes: Uint8Array): OpusHead | null {
  if (bytes.length < 19 || String.fromCharCode(...bytes.subarray(0, 8)) !== 'OpusHead') return null;
  const channels = bytes[9]!;
  const preSkip = bytes[10]! | (bytes[11]! << 8);
  const family = bytes[18]!;
  if (family === 0) {
    if (channels !== 1 && channels !== 2) return null;
    return {
      channels,
      preSkip,
      streamCount: 1,
      coupledStreamCount: channels - 1,
      mapping: [0, 1].slice(0, channels),
    };
  }
  if (channels === 0 || bytes.length < 21 + channels) return null;
  const mapping = [...bytes.subarray(21, 21 + channels)];
  return { channels, preSkip, streamCount: bytes[19]!, coupledStreamCount: bytes[20]!, mapping };
}

/** Longest packet that its decoder takes: 32 000 · 0.12 bytes a channel. */
const MAX_PACKET_BYTES_A_CHANNEL = 3_840;

/** Opens a decoder for a stream; the pre-skip is left to the caller. */
export async function openOpus(head: OpusHead): Promise<OpusPacketDecoder> {
  if (head.channels > 8) {
    throw new DecodeError('unsupported', { trouble: 'opus-channels', channels: head.channels });
  }
  const decoder = new OpusDecoder({
    channels: head.channels,
    streamCount: head.streamCount,
    coupledStreamCount: head.coupledStreamCount,
    channelMappingTable: [...head.mapping],
    preSkip: 0,
  });
  await decoder.ready;
  return {
    decode: (packet) => {
      if (packet.length === 0 || packet.length > MAX_PACKET_BYTES_A_CHANNEL * head.channels) return [];
      return decoder.decodeFrame(packet).channelData;
    },
    free: () => decoder.free(),
  };
}
