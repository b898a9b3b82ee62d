import { ArchiveError } from './errors.ts';
import type { ArchiveLimits } from './types.ts';
import { readEnd } from './end.ts';

/** One line of the directory at the end of a zip. */
export interface Listed {
  /** as they stand there; what they spell depends on the writer (names.ts) */
  readonly nameBytes: Uint8Array;
  /** what its writer added (APPNOTE.TXT 6.3.10, 4.5) */
  readonly extra: Uint8Array;
  /** the system it was packed on: 0 DOS and Windows, 3 Unix, 19 macOS (4.4.2) */
  readonly host: number;
  readonly flags: number;
  /** 0: as it is, 8: deflated */
  readonly method: number;
  readonly crc: number;
  readonly packedBytes: number;
  readonly sizeBytes: number;
  /** where its own header lies in the file */
  readonly headerAt: number;
}

/** Signature and length of a line (APPNOTE.TXT 6.3.10, 4.3.12). */
const LISTED = { signature: 0x02014b50, bytes: 46 } as const;
/** A field that is full stands for one in the member's extra field of zip64 (4.3.9.2, 4.5.3). */
const FULL = 0xffffffff;
const ZIP64_FIELD = 1;

export const NOT_WHOLE = { trouble: 'zip-damaged' } as const;

export interface Directory {
  readonly listed: readonly Listed[];
  /** where the directory begins, and the members end */
  readonly at: number;
}

/** Reads the directory of a zip, zip64 too, within the limits of file and count. Throws ArchiveError; the lines are still to be checked. */
export async function readDirectory(file: Blob, limits: ArchiveLimits): Promise<Directory> {
  if (file.size > limits.mostFileBytes) {
    throw new ArchiveError({ trouble: 'zip-too-large', mostMb: inMegabytes(limits.mostFileBytes) });
  }
  const end = await readEnd(file);
  if (end === null) throw new ArchiveError(NOT_WHOLE);
  const { members, bytes, at } = end;
  if (members > limits.mostMembers) {
    throw new ArchiveError({ trouble: 'zip-too-many', files: members, most: limits.mostMembers });
  }
  if (at + bytes !== end.endAt || bytes < members * LISTED.bytes) throw new ArchiveError(NOT_WHOLE);
  return { listed: readListed(await viewOf(file, at, at + bytes), members), at };
}

function readListed(view: DataView, members: number): readonly Listed[] {
  const listed: Listed[] = [];
  let at = 0;
  for (let member = 0; member < members; member++) {
    if (at + LISTED.bytes > view.byteLength || view.getUint32(at, true) !== LISTED.signature)
      throw new ArchiveError(NOT_WHOLE);
    const nameAt = at + LISTED.bytes;
    const extraAt = nameAt + view.getUint16(at + 28, true);
    const commentAt = extraAt + view.getUint16(at + 30, true);
    const nextAt = commentAt + view.getUint16(at + 32, true);
    if (nextAt > view.byteLength) throw new ArchiveError(NOT_WHOLE);
    const part = (from: number, to: number): Uint8Array =>
      new Uint8Array(view.buffer, view.byteOffset + from, to - from);
    const extra = part(extraAt, commentAt);
    const [sizeBytes, packedBytes, headerAt] = wide(extra, [
      view.getUint32(at + 24, true),
      view.getUint32(at + 20, true),
      view.getUint32(at + 42, true),
    ]);
    listed.push({
      nameBytes: part(nameAt, extraAt),
      extra,
      host: view.getUint8(at + 5),
      flags: view.getUint16(at + 8, true),
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packedBytes: packedBytes!,
      sizeBytes: sizeBytes!,
      headerAt: headerAt!,
    });
    at = nextAt;
  }
  if (at !== view.byteLength) throw new ArchiveError(NOT_WHOLE);
  return listed;
}

/** Those of the values that are full → what the zip64 field has in their place, in the same order. */
function wide(extra: Uint8Array, values: readonly number[]): readonly number[] {
  const field = extraField(extra, ZIP64_FIELD);
  let at = 0;
  return values.map((value) => {
    if (value !== FULL) return value;
    if (field === null || at + 8 > field.length) throw new ArchiveError(NOT_WHOLE);
    at += 8;
    return Number(new DataView(field.buffer, field.byteOffset).getBigUint64(at - 8, true));
  });
}

/** One of the fields that a writer added, by its number; null where it is not there. */
export function extraField(extra: Uint8Array, id: number): Uint8Array | null {
  const view = new DataView(extra.buffer, extra.byteOffset, extra.byteLength);
  for (let at = 0; at + 4 <= extra.length;) {
    const bytes = view.getUint16(at + 2, true);
    if (view.getUint16(at, true) === id) return extra.subarray(at + 4, at + 4 + bytes);
    at += 4 + bytes;
  }
  return null;
}

export const inMegabytes = (bytes: number): number => Math.floor(bytes / 2 ** 20);

async function viewOf(file: Blob, from: number, to: number): Promise<DataView> {
  return new DataView(await file.slice(from, to).arrayBuffer());
}
