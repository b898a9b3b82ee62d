import { joined } from '../decode/file-bytes.ts';

/** Files in one file: "ustar" (POSIX 1003.1-1988), which every system opens. Regular files with short names only. */

const BLOCK_BYTES = 512;
/** Where the fields of a header lie. */
const NAME_BYTES = 100;
const SIZE_AT = 124;
const SIZE_BYTES = 12;
const CHECKSUM_AT = 148;
const KIND_AT = 156;

interface TarMember {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** The archive cannot be read on: it is damaged, cut short, or no archive. */
export class TarError extends Error {
  override readonly name = 'TarError';
}

/** One file → its header, its bytes and what fills up the last block. */
export function tarParts({ name, bytes }: TarMember, whenMs: number): readonly Uint8Array<ArrayBuffer>[] {
  const header = new Uint8Array(BLOCK_BYTES);
  const encoded = new TextEncoder().encode(name);
  if (encoded.length > NAME_BYTES)
    throw new RangeError(`name=${name} is longer than ${NAME_BYTES} bytes; shorten it.`);
  header.set(encoded);
  const text = (at: number, value: string): void => header.set(new TextEncoder().encode(value), at);
  text(100, '0000644\0');
  text(108, '0000000\0');
  text(116, '0000000\0');
  text(SIZE_AT, `${bytes.length.toString(8).padStart(SIZE_BYTES - 1, '0')}\0`);
  text(
    136,
    `${Math.floor(whenMs / 1000)
      .toString(8)
      .padStart(11, '0')}\0`,
  );
  text(KIND_AT, '0');
  text(257, 'ustar\x0000');
  text(CHECKSUM_AT, `${checksum(header).toString(8).padStart(6, '0')}\0 `);
  return [header, bytes, new Uint8Array(padding(bytes.length))];
}

/** A value → the same for a file that holds it as JSON. */
export const jsonParts = (name: string, value: unknown, whenMs: number) =>
  tarParts({ name, bytes: new TextEncoder().encode(JSON.stringify(value)) }, whenMs);

/** What ends an archive: two empty blocks. */
export function tarEnd(): Uint8Array<ArrayBuffer> {
  return new Uint8Array(2 * BLOCK_BYTES);
}

/**
 * A stream → the files in it, one at a time. A file longer than `mostBytes` is passed over, with null for its bytes.
 *
 * @throws TarError on anything that is no archive, and where the stream ends too early.
 */
export async function* tarMembers(
  stream: ReadableStream<Uint8Array>,
  mostBytes: number,
): AsyncGenerator<{ readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> | null }> {
  const source = new Source(stream.getReader());
  try {
    for (;;) {
      const header = await source.take(BLOCK_BYTES);
      if (header.every((byte) => byte === 0)) return;
      const { name, size, isFile } = readHeader(header);
      const kept = size <= mostBytes && isFile;
      const bytes = kept ? await source.take(size) : null;
      if (!kept) await source.skip(size);
      await source.skip(padding(size));
      if (isFile) yield { name, bytes };
    }
  } finally {
    await source.end();
  }
}

function readHeader(header: Uint8Array): { name: string; size: number; isFile: boolean } {
  const text = (at: number, length: number): string =>
    new TextDecoder().decode(header.subarray(at, at + length)).replace(/[\0 ].*$/s, '');
  const said = Number.parseInt(text(CHECKSUM_AT, 8), 8);
  const size = Number.parseInt(text(SIZE_AT, SIZE_BYTES), 8);
  if (said !== checksum(header) || !(size >= 0)) throw new TarError('It is damaged.');
  const kind = text(KIND_AT, 1);
  return { name: text(0, NAME_BYTES), size, isFile: kind === '0' || kind === '' };
}

/** Sum of the header's bytes, its own field taken as blanks. */
function checksum(header: Uint8Array): number {
  return header.reduce((sum, byte, at) => sum + (at >= CHECKSUM_AT && at < CHECKSUM_AT + 8 ? 32 : byte), 0);
}

function padding(size: number): number {
  return (BLOCK_BYTES - (size % BLOCK_BYTES)) % BLOCK_BYTES;
}

/** Bytes in the amounts in which they are wanted. */
class Source {
  readonly #reader: ReadableStreamDefaultReader<Uint8Array>;
  #block: Uint8Array = new Uint8Array(0);

  constructor(reader: ReadableStreamDefaultReader<Uint8Array>) {
    this.#reader = reader;
  }

  async take(count: number): Promise<Uint8Array<ArrayBuffer>> {
    const parts: Uint8Array[] = [];
    for (let left = count; left > 0;) {
      const part = await this.#next(left);
      parts.push(part);
      left -= part.length;
    }
    return joined(parts);
  }

  async skip(count: number): Promise<void> {
    for (let left = count; left > 0;) left -= (await this.#next(left)).length;
  }

  async end(): Promise<void> {
    await this.#reader.cancel().catch(() => undefined);
  }

  async #next(most: number): Promise<Uint8Array> {
    while (this.#block.length === 0) {
      const { done, value } = await this.#reader.read();
      if (done) throw new TarError('It ends too early.');
      this.#block = value;
    }
    const part = this.#block.subarray(0, most);
    this.#block = this.#block.subarray(part.length);
    return part;
  }
}
