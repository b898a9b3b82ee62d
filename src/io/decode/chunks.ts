/** A named part of a RIFF or IFF file. */
export interface Chunk {
  readonly bytes: Uint8Array;
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

/**
 * The first chunk of each name (Multimedia Programming Interface 1991, chapter 2; "EA IFF 85", 1985). Chunks are padded to even
 * length; some writers forget it.
 */
export function readChunks(bytes: Uint8Array, options: ChunkOptions): ReadonlyMap<string, Chunk> {
  const { littleEndian, sound, endsWithSound } = options;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks = new Map<string, Chunk>();
  let at = 12;
  while (at + 8 <= bytes.length && !(endsWithSound && chunks.has(sound))) {
    const name = String.fromCharCode(...bytes.subarray(at, at + 4));
    const said = view.getUint32(at + 4, littleEndian);
    const start = at + 8;
    const there = bytes.length - start;
    const unknown = name === sound && UNKNOWN_SIZES.includes(said);
    const size = unknown ? (dataSize64(chunks.get('ds64')) ?? there) : said;
    if (!chunks.has(name)) {
      const part = bytes.subarray(start, start + Math.min(size, there));
      chunks.set(name, { bytes: part, missingBytes: Math.max(size - there, 0) });
    }
    const end = start + size;
    at = size % 2 === 1 && !(isChunkName(bytes, end) && !isChunkName(bytes, end + 1)) ? end + 1 : end;
  }
  return chunks;
}

/** Length of the data as the "ds64" chunk of a 64-bit file tells it (EBU Tech 3306, section 3); null without one. */
function dataSize64(chunk: Chunk | undefined): number | null {
  if (chunk === undefined || chunk.bytes.length < 16) return null;
  const { buffer, byteOffset } = chunk.bytes;
  const size = Number(new DataView(buffer, byteOffset).getBigUint64(8, true));
  return size > 0 && Number.isSafeInteger(size) ? size : null;
}

function isChunkName(bytes: Uint8Array, at: number): boolean {
  const name = bytes.subarray(at, at + 4);
  return name.length === 4 && name.every((code) => code >= 0x20 && code < 0x7f);
}
