import { EncodedPacketSink } from 'mediabunny';
import type { Notice } from '../../engine/index.ts';
import { joined } from './file-bytes.ts';
import { cutAt } from './gather.ts';
import { bytesOf } from './packets.ts';
import { openTrack } from './tracks.ts';
import type { Container } from './types.ts';

/** Some seconds of AAC. A packet needs the one before it, which is why a piece may begin with samples that are to be dropped. */
export interface AacPiece {
  readonly adts: ArrayBuffer;
  readonly drop: number;
}

/** AAC out of a container, made into ADTS streams that any AAC decoder takes. */
export interface AacTrack {
  /** one after the other */
  readonly pieces: readonly AacPiece[];
  readonly sampleRateHz: number;
  readonly container: Container;
  /** samples to drop at the start, and how many there are after that; null: all */
  readonly skip: number;
  readonly frames: number | null;
  readonly remarks: readonly Notice[];
}

/** Samples in a packet of AAC-LC (ISO/IEC 14496-3, 4.5.2: frameLengthFlag 0). */
const PACKET_FRAMES = 1024;
/** Packets decoded at a time, about ten seconds: decoders give what they get in one piece. */
const PIECE_PACKETS = 500;
/** Object type of AAC-LC (ISO/IEC 14496-3, table 1.17), nearly all there is; others are not taken. */
const LOW_COMPLEXITY = 2;
const ADTS_HEADER_BYTES = 7;
/** A packet longer than what the 13-bit length of an ADTS header can say is damage. */
const LONGEST_ADTS_FRAME = 8191;

/** The bytes of a file → its AAC-LC track, up to `maxFrames` samples; null where it has none. */
export async function readAacTrack(bytes: Uint8Array, maxFrames: number): Promise<AacTrack | null> {
  const track = await openTrack(bytes);
  if (track.codec !== 'aac') return null;
  const sampleRateHz = track.sampleRate;
  const config = bytesOf((await track.getDecoderConfig())?.description);
  if (config.length === 0) {
    // An ADTS file is such a stream already.
    const pieces = [{ adts: bytes.slice().buffer, drop: 0 }];
    return { pieces, sampleRateHz, container: 'AAC', skip: 0, frames: null, remarks: [] };
  }
  const header = readConfig(config);
  if (header === null) return null;
  const packets: Uint8Array[] = [];
  const remarks: Notice[] = [];
  let firstSec: number | null = null;
  let endSec = 0;
  try {
    for await (const { data, timestamp, duration } of new EncodedPacketSink(track).packets()) {
      firstSec ??= timestamp;
      endSec = timestamp + duration;
      const length = ADTS_HEADER_BYTES + data.length;
      if (length > LONGEST_ADTS_FRAME) continue;
      packets.push(joined([adtsHeader(header, length), data]));
      if (packets.length * PACKET_FRAMES >= maxFrames) {
        remarks.push(cutAt(maxFrames, sampleRateHz));
        break;
      }
    }
  } catch (error) {
    if (packets.length === 0) throw error;
    remarks.push({ notice: 'damaged-after' });
  }
  if (firstSec === null) return null;
  // What lies before time 0 is the encoder's own start and no part of the recording (the edit list of the file says so).
  const skip = Math.max(0, Math.round(-firstSec * sampleRateHz));
  const frames = Math.round((endSec - Math.max(firstSec, 0)) * sampleRateHz);
  const pieces: AacPiece[] = [];
  for (let at = 0; at < packets.length; at += PIECE_PACKETS) {
    const early = Math.min(at, 1);
    const adts = joined(packets.slice(at - early, at + PIECE_PACKETS)).buffer;
    pieces.push({ adts, drop: early * PACKET_FRAMES });
  }
  return { pieces, sampleRateHz, container: 'MP4', skip, frames, remarks };
}

interface AacConfig {
  readonly rateIndex: number;
  readonly channels: number;
}

/** AudioSpecificConfig (ISO/IEC 14496-3, 1.6.2.1): 5 bits object type, 4 bits rate, 4 bits channels; null: not AAC-LC. */
function readConfig(bytes: Uint8Array): AacConfig | null {
  if (bytes.length < 2) return null;
  const bits = (bytes[0]! << 8) | bytes[1]!;
  const rateIndex = (bits >> 7) & 15;
  const channels = (bits >> 3) & 15;
  return bits >> 11 === LOW_COMPLEXITY && rateIndex < 13 && channels > 0 && channels < 8
    ? { rateIndex, channels }
    : null;
}

/** ADTS header without checksum (ISO/IEC 13818-7, 6.2). */
function adtsHeader({ rateIndex, channels }: AacConfig, length: number): Uint8Array {
  return Uint8Array.of(
    0xff,
    0xf1,
    ((LOW_COMPLEXITY - 1) << 6) | (rateIndex << 2) | (channels >> 2),
    ((channels & 3) << 6) | (length >> 11),
    (length >> 3) & 0xff,
    ((length & 7) << 5) | 0x1f,
    0xfc,
  );
}
