import { imaPackets } from './adpcm-ima.ts';
import { packetLengths, readPacketTable } from './caf-packets.ts';
import type { PacketFormat } from './caf-packets.ts';
import { DecodeError } from './errors.ts';
import { SoundGatherer } from './gather.ts';
import { OPUS_RATE_HZ, openOpus } from './opus-packets.ts';
import { gatherPieces, plainPieces } from './pieces.ts';
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
export async function decode(bytes: Uint8Array, limits: DecodeLimits): Promise<DecodedAudio> {
  const chunks = readChunks(bytes);
  const description = chunks.get('desc')?.bytes;
  const data = chunks.get('data');
  if (description === undefined || description.length < DESCRIPTION_BYTES) {
    throw new DecodeError('damaged', { trouble: 'header-missing', container: 'Core Audio' });
  }
  if (data === undefined || data.bytes.length <= EDIT_COUNT_BYTES) {
    throw new DecodeError('damaged', { trouble: 'container-without-sound', container: 'Core Audio' });
  }
  const format = readDescription(description);
  const sound = { ...data, bytes: data.bytes.subarray(EDIT_COUNT_BYTES) };
  const gatherer = new SoundGatherer(limits);
  if (format.kind === 'opus') return decodeOpus(sound.bytes, format, chunks.get('pakt')?.bytes, gatherer);
  const pieces = openPieces(format);
  gatherPieces(gatherer, pieces, sound, format.sampleRateHz);
  const table = readPacketTable(chunks.get('pakt')?.bytes);
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

function openPieces(format: Description): PieceDecoder {
  const { kind, flags, channels, bits, packetBytes, sampleRateHz } = format;
  const littleEndian = (flags & IS_LITTLE_ENDIAN) !== 0;
  const open = (): PieceDecoder | null => {
    switch (kind) {
      case 'lpcm': {
        const encoding = (flags & IS_FLOAT) === 0 ? 'signed' : 'float';
        return plainPieces({ encoding, bytesPerSample: packetBytes / channels, littleEndian, channels });
      }
      case 'ulaw':
        return plainPieces({ encoding: 'mu-law', bytesPerSample: 1, littleEndian, channels });
      case 'alaw':
        return plainPieces({ encoding: 'a-law', bytesPerSample: 1, littleEndian, channels });
      case 'ima4':
        return imaPackets(channels);
      default: {
        const name = NAMES[kind];
        throw new DecodeError('unsupported', {
          trouble: 'packed-otherwise',
          container: 'Core Audio',
          codec: name ?? null,
        });
      }
    }
  };
  // More channels than any recording has would ask for more memory than there is.
  const pieces = channels <= MOST_CHANNELS ? open() : null;
  if (pieces === null) {
    throw new DecodeError('damaged', {
      trouble: 'header-senseless',
      container: 'Core Audio',
      channels,
      rateHz: sampleRateHz,
      bits,
    });
  }
  return pieces;
}

const MOST_CHANNELS = 256;

/** Opus packets one after the other, their lengths in the packet table; so many samples at the start are the encoder's own. */
async function decodeOpus(
  bytes: Uint8Array,
  format: Description,
  tableBytes: Uint8Array | undefined,
  gatherer: SoundGatherer,
): Promise<DecodedAudio> {
  const table = readPacketTable(tableBytes);
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

interface Chunk {
  readonly bytes: Uint8Array;
  readonly missingBytes: number;
}

/** The first chunk of each name; a size of −1 reaches to the end of the file ("Audio Data Chunk"). */
function readChunks(bytes: Uint8Array): ReadonlyMap<string, Chunk> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks = new Map<string, Chunk>();
  let at = FILE_HEAD_BYTES;
  while (at + CHUNK_HEAD_BYTES <= bytes.length) {
    const name = String.fromCharCode(...bytes.subarray(at, at + 4));
    const said = Number(view.getBigInt64(at + 4));
    const start = at + CHUNK_HEAD_BYTES;
    const there = bytes.length - start;
    const size = said < 0 ? there : said;
    if (!chunks.has(name)) {
      const part = bytes.subarray(start, start + Math.min(size, there));
      chunks.set(name, { bytes: part, missingBytes: Math.max(size - there, 0) });
    }
    at = start + size;
  }
  return chunks;
}
