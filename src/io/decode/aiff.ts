import { imaPackets } from './adpcm-ima.ts';
import { readChunks, startOf } from './chunks.ts';
import { DecodeError } from './errors.ts';
import { partOf } from './file-bytes.ts';
import type { FileBytes } from './file-bytes.ts';
import { SoundGatherer } from './gather.ts';
import type { PcmLayout } from './pcm.ts';
import { gatherPieces, plainPieces } from './pieces.ts';
import type { PieceDecoder } from './pieces.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

/** Bytes of a COMM chunk before the kind of packing (AIFF-C draft of 1991, "The Extended Common Chunk"). */
const COMMON_BYTES = 18;
/** Bytes of an SSND chunk before the samples: how many of them to leave out, and the size of a block. */
const SOUND_HEAD_BYTES = 8;

/**
 * AIFF and AIFF-C ("Audio Interchange File Format", version 1.3, 1989; AIFF-C draft of 1991) → sound: plain samples of either
 * order of bytes, floating point, µ-law, A-law and IMA ADPCM. A file cut short gives what is there, with a remark.
 */
export async function decode(file: FileBytes, limits: DecodeLimits): Promise<DecodedAudio> {
  const chunks = await readChunks(file, { littleEndian: false, sound: 'SSND', endsWithSound: false });
  const common = await startOf(chunks.get('COMM'), COMMON_BYTES + 4);
  const sound = chunks.get('SSND');
  if (common === null || common.length < COMMON_BYTES) {
    throw new DecodeError('damaged', { trouble: 'header-missing', container: 'AIFF' });
  }
  if (sound === undefined || sound.body.size <= SOUND_HEAD_BYTES) {
    throw new DecodeError('damaged', { trouble: 'container-without-sound', container: 'AIFF' });
  }
  const { pieces, frames, sampleRateHz } = readCommon(common);
  const head = await sound.body.read(0, SOUND_HEAD_BYTES);
  const start = SOUND_HEAD_BYTES + new DataView(head.buffer, head.byteOffset).getUint32(0);
  const data = { ...sound, body: partOf(sound.body, start, Infinity) };
  const gatherer = new SoundGatherer(limits);
  await gatherPieces(gatherer, pieces, data, sampleRateHz);
  // A recorder that was stopped leaves 0. IMA ADPCM counts packets here.
  return gatherer.finish('AIFF', frames === 0 ? Infinity : frames * pieces.pieceFrames);
}

function readCommon(bytes: Uint8Array): {
  readonly pieces: PieceDecoder;
  readonly frames: number;
  readonly sampleRateHz: number;
} {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const channels = view.getUint16(0);
  const bytesPerSample = Math.ceil(view.getUint16(6) / 8);
  const sampleRateHz = Math.round(extended(view, 8));
  const packing = bytes.length >= COMMON_BYTES + 4 ? String.fromCharCode(...bytes.subarray(18, 22)) : 'NONE';
  const plain = (
    encoding: PcmLayout['encoding'],
    littleEndian = false,
    each = bytesPerSample,
  ): PieceDecoder | null => plainPieces({ encoding, bytesPerSample: each, littleEndian, channels });
  const open = (): PieceDecoder | null => {
    switch (packing.toLowerCase()) {
      case 'none':
      case 'twos':
      case 'in24':
      case 'in32':
        return plain('signed');
      case 'sowt':
        return plain('signed', true);
      case 'raw ':
        return plain('unsigned');
      case 'fl32':
        return plain('float', false, 4);
      case 'fl64':
        return plain('float', false, 8);
      case 'ulaw':
        return plain('mu-law', false, 1);
      case 'alaw':
        return plain('a-law', false, 1);
      case 'ima4':
        return imaPackets(channels);
      default:
        throw new DecodeError('unsupported', { trouble: 'packed-otherwise', container: 'AIFF', codec: null });
    }
  };
  const pieces = open();
  if (pieces === null) {
    throw new DecodeError('damaged', {
      trouble: 'header-senseless',
      container: 'AIFF',
      channels,
      rateHz: sampleRateHz,
      bits: bytesPerSample * 8,
    });
  }
  return { pieces, frames: view.getUint32(2), sampleRateHz };
}

/** A number of 80 bits: sign, 15 bits of exponent, 64 of fraction with the one before its point (IEEE 754, extended). */
function extended(view: DataView, at: number): number {
  const exponent = (view.getUint16(at) & 0x7fff) - 16_383;
  return view.getUint32(at + 2) * 2 ** (exponent - 31) + view.getUint32(at + 6) * 2 ** (exponent - 63);
}
