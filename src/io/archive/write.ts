import { deflateSync } from 'fflate';
import { crc32InTurns } from './crc.ts';
import { createTurns } from './turns.ts';

/** A file on its way into an archive. */
export interface ArchiveFile {
  /** ASCII, with / between folders */
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** deflate: for text; store: for what is packed already */
  readonly packing: 'deflate' | 'store';
}

/** Version 2.0 of the format, which knows deflate; 1 January 1980, the first day that it can name. */
const VERSION = 20;
const NO_TIME = [0, 2] as const;
const FIRST_DAY = [33, 2] as const;
/** How hard deflate tries; of text in JSON more is hardly smaller. */
const DEFLATE_LEVEL = 6;

/**
 * Files → a zip, in their order (APPNOTE.TXT 6.3.10, 4.3.6). The same files give the same bytes wherever it is written. The
 * page goes on between them; nothing is copied but what is deflated.
 */
export async function writeArchive(files: readonly ArchiveFile[], mime: string): Promise<Blob> {
  const turn = createTurns();
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const directory: Uint8Array<ArrayBuffer>[] = [];
  let at = 0;
  for (const { name, bytes, packing } of files) {
    const packed = packing === 'store' ? bytes : deflateSync(bytes, { level: DEFLATE_LEVEL });
    await turn();
    const named = new TextEncoder().encode(name);
    const shared = [
      [VERSION, 2],
      [0, 2],
      [packing === 'store' ? 0 : 8, 2],
      NO_TIME,
      FIRST_DAY,
      [await crc32InTurns(bytes, turn), 4],
      [packed.length, 4],
      [bytes.length, 4],
      [named.length, 2],
      [0, 2],
    ] as const;
    const head = fields([[0x04034b50, 4], ...shared]);
    parts.push(head, named, packed);
    directory.push(
      fields([[0x02014b50, 4], [VERSION, 2], ...shared, [0, 2], [0, 2], [0, 2], [0, 4], [at, 4]]),
      named,
    );
    at += head.length + named.length + packed.length;
  }
  const directoryBytes = directory.reduce((sum, { length }) => sum + length, 0);
  const end = fields([
    [0x06054b50, 4],
    [0, 2],
    [0, 2],
    [files.length, 2],
    [files.length, 2],
    [directoryBytes, 4],
    [at, 4],
    [0, 2],
  ]);
  return new Blob([...parts, ...directory, end], { type: mime });
}

/** Values and their sizes in bytes → the bytes, the lowest first. */
function fields(values: readonly (readonly [value: number, bytes: number])[]): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(
    values.flatMap(([value, bytes]) => Array.from({ length: bytes }, (_, i) => value >>> (8 * i))),
  );
}
