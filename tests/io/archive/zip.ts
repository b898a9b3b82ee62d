import { deflateSync } from 'fflate';
import { crc32 } from '../../../src/io/archive/crc.ts';

/** A file for an archive, and what is to be said of it that is not so. */
export interface Laid {
  readonly name: string | Uint8Array;
  readonly bytes: Uint8Array;
  readonly method?: number;
  readonly flags?: number;
  readonly crc?: number;
  /** what the directory says of the sizes */
  readonly packedBytes?: number;
  readonly sizeBytes?: number;
  /** packed bytes as they are to lie there */
  readonly packed?: Uint8Array;
  /** the directory sends the reader there */
  readonly headerAt?: number;
  /** no header of its own: only a line in the directory */
  readonly unlaid?: boolean;
}

export interface Ending {
  readonly members?: number;
  readonly disk?: number;
  readonly comment?: Uint8Array;
  readonly directoryAt?: number;
  readonly directoryBytes?: number;
}

/** Lays out a zip by hand, so that tests can lie in every field of it (APPNOTE.TXT 6.3.10, 4.3.6). */
export function layZip(files: readonly Laid[], ending: Ending = {}): Uint8Array<ArrayBuffer> {
  const parts: Uint8Array[] = [];
  let at = 0;
  const put = (bytes: Uint8Array): void => {
    parts.push(bytes);
    at += bytes.length;
  };
  const lines = files.map((file) => {
    const name = typeof file.name === 'string' ? new TextEncoder().encode(file.name) : file.name;
    const method = file.method ?? 8;
    const packed = file.packed ?? (method === 8 ? deflateSync(file.bytes) : file.bytes);
    const shared = [
      [file.flags ?? 0, 2],
      [method, 2],
      [0, 2],
      [33, 2],
      [file.crc ?? crc32(file.bytes), 4],
      [file.packedBytes ?? packed.length, 4],
      [file.sizeBytes ?? file.bytes.length, 4],
      [name.length, 2],
      [0, 2],
    ] as const;
    const headerAt = file.headerAt ?? at;
    if (file.unlaid !== true) {
      put(fields([[0x04034b50, 4], [20, 2], ...shared]));
      put(name);
      put(packed);
    }
    return [
      fields([[0x02014b50, 4], [20, 2], [20, 2], ...shared, [0, 2], [0, 2], [0, 2], [0, 4], [headerAt, 4]]),
      name,
    ];
  });
  const directoryAt = at;
  for (const line of lines.flat()) put(line);
  const { comment = new Uint8Array(0), disk = 0 } = ending;
  const members = ending.members ?? files.length;
  put(
    fields([
      [0x06054b50, 4],
      [disk, 2],
      [disk, 2],
      [members, 2],
      [members, 2],
      [ending.directoryBytes ?? at - directoryAt, 4],
      [ending.directoryAt ?? directoryAt, 4],
      [comment.length, 2],
    ]),
  );
  put(comment);
  const whole = new Uint8Array(at);
  let to = 0;
  for (const part of parts) {
    whole.set(part, to);
    to += part.length;
  }
  return whole;
}

function fields(values: readonly (readonly [value: number, bytes: number])[]): Uint8Array {
  const bytes = values.flatMap(([value, count]) =>
    Array.from({ length: count }, (_, at) => Math.floor(value / 256 ** at) & 255),
  );
  return Uint8Array.from(bytes);
}
