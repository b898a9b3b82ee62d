import { imaBlocks } from './adpcm-ima.ts';
import { msBlocks } from './adpcm-ms.ts';
import { readChunks, startOf } from './chunks.ts';
import { DecodeError } from './errors.ts';
import type { FileBytes } from './file-bytes.ts';
import { SoundGatherer } from './gather.ts';
import type { PcmLayout } from './pcm.ts';
import { gatherPieces, plainPieces, requirePieces } from './pieces.ts';
import type { PieceDecoder } from './pieces.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

/** wFormatTag values (Multimedia Programming Interface 1991; "New Multimedia Data Types and Data Techniques" 3.0, 1994). */
const FORMAT = { pcm: 1, msAdpcm: 2, float: 3, aLaw: 6, muLaw: 7, imaAdpcm: 0x11 } as const;
/** WAVE_FORMAT_EXTENSIBLE of 1998 */
const EXTENSIBLE = 0xfffe;

/** As much of the format as is looked at: to the end of WAVEFORMATEXTENSIBLE. */
const FORMAT_BYTES = 40;

/** Sound that WAV can pack and nobody here can read, by its tag (the same register, and RFC 2361). */
const NAMES: Readonly<Record<number, string>> = {
  0x31: 'GSM',
  0x45: 'G.726',
  0x50: 'MPEG layer 2',
  0x55: 'MP3',
  0x64: 'G.726',
  0xff: 'AAC',
  0x161: 'Windows Media',
  0x1610: 'AAC',
  0x2000: 'Dolby',
};

/**
 * WAV (RIFF, RF64, BW64) → sound: 8-bit unsigned, 16/24/32-bit integer, 32/64-bit floating point, plain or extensible, and of
 * the packed kinds µ-law, A-law, IMA and Microsoft ADPCM. A file cut short gives what is there, with a remark.
 */
export async function decode(file: FileBytes, limits: DecodeLimits): Promise<DecodedAudio> {
  const chunks = await readChunks(file, { littleEndian: true, sound: 'data', endsWithSound: true });
  const format = await startOf(chunks.get('fmt '), FORMAT_BYTES);
  const data = chunks.get('data');
  if (format === null || format.length < 16) {
    throw new DecodeError('damaged', { trouble: 'wav-header-short' });
  }
  if (data === undefined) {
    throw new DecodeError('damaged', { trouble: 'container-without-sound', container: 'WAV' });
  }
  const { pieces, sampleRateHz } = readFormat(format);
  const gatherer = new SoundGatherer(limits);
  await gatherPieces(gatherer, pieces, data, sampleRateHz);
  return gatherer.finish(
    'WAV',
    pieces.pieceFrames === 1 ? Infinity : saidFrames(await startOf(chunks.get('fact'), 4)),
  );
}

/** How many samples a packed file says that it holds: its last block is filled up. Infinity where it does not say. */
function saidFrames(fact: Uint8Array | null): number {
  if (fact === null || fact.length < 4) return Infinity;
  const frames = new DataView(fact.buffer, fact.byteOffset).getUint32(0, true);
  return frames === 0 ? Infinity : frames;
}

function readFormat(bytes: Uint8Array): { readonly pieces: PieceDecoder; readonly sampleRateHz: number } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tag = view.getUint16(0, true);
  // The subformat's first two bytes are the tag that a plain header would have had (WAVEFORMATEXTENSIBLE).
  const format = tag === EXTENSIBLE && bytes.length >= 26 ? view.getUint16(24, true) : tag;
  const channels = view.getUint16(2, true);
  const sampleRateHz = view.getUint32(4, true);
  const blockBytes = view.getUint16(12, true);
  const bytesPerSample = Math.ceil(view.getUint16(14, true) / 8);
  const plain = (encoding: PcmLayout['encoding'], each = bytesPerSample): PieceDecoder | null =>
    plainPieces({ encoding, bytesPerSample: each, littleEndian: true, channels });
  const kinds: Readonly<Record<number, () => PieceDecoder | null>> = {
    [FORMAT.pcm]: () => plain(bytesPerSample === 1 ? 'unsigned' : 'signed'),
    [FORMAT.float]: () => plain('float'),
    [FORMAT.muLaw]: () => plain('mu-law', 1),
    [FORMAT.aLaw]: () => plain('a-law', 1),
    [FORMAT.imaAdpcm]: () => imaBlocks(channels, blockBytes),
    [FORMAT.msAdpcm]: () => msBlocks(channels, blockBytes),
  };
  const opened = kinds[format]?.();
  const bits = bytesPerSample * 8;
  const said = { container: 'WAV', channels, sampleRateHz, bits, codec: NAMES[format] ?? null } as const;
  return { pieces: requirePieces(opened && sampleRateHz === 0 ? null : opened, said), sampleRateHz };
}
