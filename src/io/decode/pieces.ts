import type { Container } from '../troubles/index.ts';
import type { Chunk } from './chunks.ts';
import { DecodeError } from './errors.ts';
import type { SoundGatherer } from './gather.ts';
import { isReadable, readPcm } from './pcm.ts';
import type { PcmLayout } from './pcm.ts';

/** A decoder of sound that lies in pieces of one size: frames of plain samples, blocks of packed ones. */
export interface PieceDecoder {
  readonly pieceBytes: number;
  /** samples a channel in a piece */
  readonly pieceFrames: number;
  /** whole pieces that follow each other → one array a channel */
  decode(pieces: Uint8Array): Float32Array[];
}

/** Bytes decoded at a time, about: ten seconds and more. */
const STRETCH_BYTES = 1 << 21;

/** One channel's samples of the packed piece that begins at byte `from` → `out`, from `to` on. */
type Unpack = (view: DataView, from: number, channel: number, out: Float32Array, to: number) => void;

/** Pieces whose samples are packed → their decoder, channel by channel and piece by piece. */
export function packedPieces(
  {
    channels,
    pieceBytes,
    pieceFrames,
  }: Pick<PieceDecoder, 'pieceBytes' | 'pieceFrames'> & { readonly channels: number },
  unpack: Unpack,
): PieceDecoder {
  return {
    pieceBytes,
    pieceFrames,
    decode: (bytes) => {
      const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
      const pieces = Math.floor(bytes.length / pieceBytes);
      return Array.from({ length: channels }, (_, channel) => {
        const out = new Float32Array(pieces * pieceFrames);
        for (let piece = 0; piece < pieces; piece++)
          unpack(view, piece * pieceBytes, channel, out, piece * pieceFrames);
        return out;
      });
    },
  };
}

/** A layout of plain samples → its decoder; null where no such samples are known. */
export function plainPieces(layout: PcmLayout): PieceDecoder | null {
  if (layout.channels < 1 || !isReadable(layout)) return null;
  return {
    pieceBytes: layout.channels * layout.bytesPerSample,
    pieceFrames: 1,
    decode: (pieces) => readPcm(pieces, layout),
  };
}

/** What a header says of its sound. */
interface Said {
  readonly container: Container;
  readonly channels: number;
  readonly sampleRateHz: number;
  readonly bits: number;
  /** what a kind that is not read here is called; null: it is rare */
  readonly codec?: string | null;
}

/** What a header's kind of sound is opened by → its decoder. Throws DecodeError: undefined, it is not read here; null, the header makes no sense. */
export function requirePieces(
  opened: PieceDecoder | null | undefined,
  { container, channels, sampleRateHz: rateHz, bits, codec = null }: Said,
): PieceDecoder {
  if (opened === undefined)
    throw new DecodeError('unsupported', { trouble: 'packed-otherwise', container, codec });
  if (opened === null)
    throw new DecodeError('damaged', { trouble: 'header-senseless', container, channels, rateHz, bits });
  return opened;
}

/** All whole pieces of `data` → the gatherer, a stretch at a time; by how much the file is shorter than it says is told. */
export async function gatherPieces(
  gatherer: SoundGatherer,
  decoder: PieceDecoder,
  { body, missingBytes }: Chunk,
  sampleRateHz: number,
): Promise<void> {
  const { pieceBytes, pieceFrames } = decoder;
  const wholeBytes = body.size - (body.size % pieceBytes);
  const step = Math.max(Math.floor(STRETCH_BYTES / pieceBytes), 1) * pieceBytes;
  for (let at = 0; at < wholeBytes; at += step) {
    const end = Math.min(at + step, wholeBytes);
    if (!gatherer.push(decoder.decode(await body.read(at, end)), sampleRateHz, end / wholeBytes)) return;
  }
  if (missingBytes < pieceBytes || gatherer.frames === 0) return;
  const seconds = (count: number): number => (count / pieceBytes) * (pieceFrames / sampleRateHz);
  const wholeSec = seconds(body.size + missingBytes);
  gatherer.remark({ notice: 'breaks-off', thereSec: seconds(body.size), wholeSec });
}
