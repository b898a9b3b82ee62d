import { imaPackets } from './adpcm-ima.ts';
import { readChunks, startOf } from './chunks.ts';
import { DecodeError } from './errors.ts';
import { partOf } from './file-bytes.ts';
import type { FileBytes } from './file-bytes.ts';
import { SoundGatherer } from './gather.ts';
import type { PcmLayout } from './pcm.ts';
import { gatherPieces, plainPieces, requirePieces } from './pieces.ts';
import type { PieceDecoder } from './pieces.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

/** Bytes of a COMM chunk before the kind of packing (AIFF-C draft of 1991, "The Extended Common Chunk"). */
const COMMON_BYTES = 18;
/** Bytes of an SSND chunk before the samples: how many of them to leave out, and the size of a block. */
const SOUND_HEAD_BYTES = 8;

/** Kinds of packing of plain samples; where nothing else is said the highest byte comes first, as many as COMM says. */
const LAYOUTS: Readonly<Record<string, Pick<PcmLayout, 'encoding'> & Partial<PcmLayout>>> = {
  none: { encoding: 'signed' },
  twos: { encoding: 'signed' },
  in24: { encoding: 'signed' },
  in32: { encoding: 'signed' },
  sowt: { encoding: 'signed', littleEndian: true },
  'raw ': { encoding: 'unsigned' },
  fl32: { encoding: 'float', bytesPerSample: 4 },
  fl64: { encoding: 'float', bytesPerSample: 8 },
  ulaw: { encoding: 'mu-law', bytesPerSample: 1 },
  alaw: { encoding: 'a-law', bytesPerSample: 1 },
};

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
  const kind = packing.toLowerCase();
  const layout = LAYOUTS[kind];
  const opened =
    kind === 'ima4'
      ? imaPackets(channels)
      : layout && plainPieces({ bytesPerSample, littleEndian: false, channels, ...layout });
  const said = { container: 'AIFF', channels, sampleRateHz, bits: bytesPerSample * 8 } as const;
  return { pieces: requirePieces(opened, said), frames: view.getUint32(2), sampleRateHz };
}

/** A number of 80 bits: sign, 15 bits of exponent, 64 of fraction with the one before its point (IEEE 754, extended). */
function extended(view: DataView, at: number): number {
  const exponent = (view.getUint16(at) & 0x7fff) - 16_383;
  return view.getUint32(at + 2) * 2 ** (exponent - 31) + view.getUint32(at + 6) * 2 ** (exponent - 63);
}
