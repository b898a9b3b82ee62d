import { imaPackets } from './adpcm-ima.ts';
import { packetLengths, readPacketTable } from './caf-packets.ts';
import type { PacketFormat, PacketTable } from './caf-packets.ts';
import { MOST_CHUNKS, startOf } from './chunks.ts';
import type { Chunk } from './chunks.ts';
import { DecodeError } from './errors.ts';
import { partOf } from './file-bytes.ts';
import type { FileBytes } from './file-bytes.ts';
import { SoundGatherer } from './gather.ts';
import { OPUS_RATE_HZ, openOpus } from './opus-packets.ts';
import type { PcmLayout } from './pcm.ts';
import { gatherPieces, plainPieces, requirePieces } from './pieces.ts';
import type { PieceDecoder } from './pieces.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

/** Bits of the format flags of plain samples (Apple Core Audio Format Specification 1.0, "Audio Description Chunk"). */
const IS_FLOAT = 1;
const IS_LITTLE_ENDIAN = 2;
const FILE_HEAD_BYTES = 8;
const CHUNK_HEAD_BYTES = 12;
const DESCRIPTION_BYTES = 32;
/** Before the samples stands how often they were edited. */
const EDIT_COUNT_BYTES = 4;
/** Twelve hours of packets of 20 ms, three bytes each, and as much again. */
const MOST_TABLE_BYTES = 1 << 24;

/** What is in such files and cannot be read here; the rest is told by its four letters. */
const NAMES: Readonly<Record<string, string>> = {
  'aac ': 'AAC',
  aace: 'AAC',
  alac: 'Apple Lossless',
  '.mp3': 'MP3',
  ilbc: 'iLBC',
  samr: 'AMR',
};

/**
 * Core Audio Format (Apple's specification 1.0) → sound: plain samples, µ-law, A-law, IMA ADPCM, and Opus, as messengers record
 * it. A file cut short gives what is there, with a remark.
 */
export async function decode(file: FileBytes, limits: DecodeLimits): Promise<DecodedAudio> {
  const chunks = await readChunks(file);
  const description = await startOf(chunks.get('desc'), DESCRIPTION_BYTES);
  const data = chunks.get('data');
  if (description === null || description.length < DESCRIPTION_BYTES) {
    throw new DecodeError('damaged', { trouble: 'header-missing', container: 'Core Audio' });
  }
  if (data === undefined || data.body.size <= EDIT_COUNT_BYTES) {
    throw new DecodeError('damaged', { trouble: 'container-without-sound', container: 'Core Audio' });
  }
  const format = readDescription(description);
  const sound = { ...data, body: partOf(data.body, EDIT_COUNT_BYTES, Infinity) };
  const table = readPacketTable(await startOf(chunks.get('pakt'), MOST_TABLE_BYTES));
  const gatherer = new SoundGatherer(limits);
  if (format.kind === 'opus')
    return decodeOpus(await sound.body.read(0, sound.body.size), format, table, gatherer);
  const pieces = openPieces(format);
  await gatherPieces(gatherer, pieces, sound, format.sampleRateHz);
  return gatherer.finish('CAF', table?.validFrames ?? Infinity);
}

interface Description extends PacketFormat {
  readonly sampleRateHz: number;
  readonly kind: string;
  readonly flags: number;
  readonly channels: number;
  readonly bits: number;
}

function readDescription(bytes: Uint8Array): Description {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return {
    sampleRateHz: Math.round(view.getFloat64(0)),
    kind: String.fromCharCode(...bytes.subarray(8, 12)),
    flags: view.getUint32(12),
    packetBytes: view.getUint32(16),
    packetFrames: view.getUint32(20),
    channels: view.getUint32(24),
    bits: view.getUint32(28),
  };
}

/** More channels than any recording has would ask for more memory than there is. */
const MOST_CHANNELS = 256;

function openPieces(format: Description): PieceDecoder {
  const { kind, flags, channels, packetBytes } = format;
  const littleEndian = (flags & IS_LITTLE_ENDIAN) !== 0;
  const plain = (encoding: PcmLayout['encoding'], bytesPerSample: number): PieceDecoder | null =>
    plainPieces({ encoding, bytesPerSample, littleEndian, channels });
  const open = {
    lpcm: () => plain((flags & IS_FLOAT) === 0 ? 'signed' : 'float', packetBytes / channels),
    ulaw: () => plain('mu-law', 1),
    alaw: () => plain('a-law', 1),
    ima4: () => imaPackets(channels),
  }[kind];
  const opened = channels <= MOST_CHANNELS ? open?.() : null;
  return requirePieces(opened, { ...format, container: 'Core Audio', codec: NAMES[kind] ?? null });
}

/** Opus packets one after the other, their lengths in the packet table; so many samples at the start are the encoder's own. */
async function decodeOpus(
  bytes: Uint8Array,
  format: Description,
  table: PacketTable | null,
  gatherer: SoundGatherer,
): Promise<DecodedAudio> {
  const { channels } = format;
  if (table === null || channels < 1 || channels > 2) {
    throw new DecodeError('damaged', { trouble: 'packet-list-missing' });
  }
  const decoder = await openOpus({
    channels,
    preSkip: 0,
    streamCount: 1,
    coupledStreamCount: channels - 1,
    mapping: [0, 1].slice(0, channels),
  });
  gatherer.leaveOut(table.primingFrames);
  let at = 0;
  try {
    for (const length of packetLengths(table, format)) {
      if (at + length > bytes.length) {
        gatherer.remark({ notice: 'damaged-after' });
        break;
      }
      const block = decoder.decode(bytes.subarray(at, at + length));
      at += length;
      if (!gatherer.push(block, OPUS_RATE_HZ, at / bytes.length)) break;
    }
  } finally {
    decoder.free();
  }
  return gatherer.finish('CAF', table.validFrames ?? Infinity);
}

/** The first chunk of each name; a size of −1 reaches to the end of the file ("Audio Data Chunk"). */
async function readChunks(file: FileBytes): Promise<ReadonlyMap<string, Chunk>> {
  const chunks = new Map<string, Chunk>();
  let at = FILE_HEAD_BYTES;
  for (let count = 0; count < MOST_CHUNKS && at + CHUNK_HEAD_BYTES <= file.size; count++) {
    const head = await file.read(at, at + CHUNK_HEAD_BYTES);
    const name = String.fromCharCode(...head.subarray(0, 4));
    const said = Number(new DataView(head.buffer, head.byteOffset).getBigInt64(4));
    const start = at + CHUNK_HEAD_BYTES;
    const there = file.size - start;
    const size = said < 0 ? there : said;
    if (!chunks.has(name))
      chunks.set(name, { body: partOf(file, start, size), missingBytes: Math.max(size - there, 0) });
    at = start + size;
  }
  return chunks;
}
