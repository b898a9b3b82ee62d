import { partOf } from './file-bytes.ts';
import type { FileBytes } from './file-bytes.ts';

/** A named part of a RIFF, IFF or Core Audio file; its bytes are read when they are wanted. */
export interface Chunk {
  readonly body: FileBytes;
  /** by how much the file is shorter than the chunk says */
  readonly missingBytes: number;
}

/** How a file lays its chunks out. */
export interface ChunkOptions {
  readonly littleEndian: boolean;
  /** the chunk with the samples */
  readonly sound: string;
  /** nothing behind the sound is wanted */
  readonly endsWithSound: boolean;
}

/** Chunk sizes that say "not known": a recorder that never came to finish its header, or a 64-bit file. */
const UNKNOWN_SIZES: readonly number[] = [0, 0xffffffff];
/** No file has so many; a damaged one may seem to have one every few bytes, and each is a reading of its own. */
export const MOST_CHUNKS = 4_096;
const FILE_HEAD_BYTES = 12;
const CHUNK_HEAD_BYTES = 8;

/**
 * The first chunk of each name (Multimedia Programming Interface 1991, chapter 2; "EA IFF 85", 1985). Chunks are padded to even
 * length; some writers forget it.
 */
export async function readChunks(
  file: FileBytes,
  options: ChunkOptions,
): Promise<ReadonlyMap<string, Chunk>> {
  const { littleEndian, sound, endsWithSound } = options;
  const chunks = new Map<string, Chunk>();
  let at = FILE_HEAD_BYTES;
  for (let count = 0; count < MOST_CHUNKS && at + CHUNK_HEAD_BYTES <= file.size; count++) {
    if (endsWithSound && chunks.has(sound)) break;
    const head = await file.read(at, at + CHUNK_HEAD_BYTES);
    const name = nameIn(head);
    const said = new DataView(head.buffer, head.byteOffset).getUint32(4, littleEndian);
    const start = at + CHUNK_HEAD_BYTES;
    const there = file.size - start;
    const unknown = name === sound && UNKNOWN_SIZES.includes(said);
    const size = unknown ? ((await dataSize64(chunks.get('ds64'))) ?? there) : said;
    if (!chunks.has(name))
      chunks.set(name, { body: partOf(file, start, size), missingBytes: Math.max(size - there, 0) });
    at = start + size + (size % 2 === 1 && (await isPadded(file, start + size)) ? 1 : 0);
  }
  return chunks;
}

/** The first bytes of a chunk, as many as there are; null without such a chunk. */
export async function startOf(chunk: Chunk | undefined, mostBytes: number): Promise<Uint8Array | null> {
  return chunk === undefined ? null : chunk.body.read(0, mostBytes);
}

/** Length of the data as the "ds64" chunk of a 64-bit file tells it (EBU Tech 3306, section 3); null without one. */
async function dataSize64(chunk: Chunk | undefined): Promise<number | null> {
  const bytes = await startOf(chunk, 16);
  if (bytes === null || bytes.length < 16) return null;
  const size = Number(new DataView(bytes.buffer, bytes.byteOffset).getBigUint64(8, true));
  return size > 0 && Number.isSafeInteger(size) ? size : null;
}

/** Whether a byte was put in behind a chunk of odd length that ends there. */
async function isPadded(file: FileBytes, end: number): Promise<boolean> {
  const bytes = await file.read(end, end + 5);
  return !(isChunkName(bytes.subarray(0, 4)) && !isChunkName(bytes.subarray(1, 5)));
}

function nameIn(head: Uint8Array): string {
  return String.fromCharCode(...head.subarray(0, 4));
}

function isChunkName(name: Uint8Array): boolean {
  return name.length === 4 && name.every((code) => code >= 0x20 && code < 0x7f);
}
