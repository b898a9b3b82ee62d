import { ArchiveError } from './errors.ts';

/** Where a zip says that its directory lies. */
export interface End {
  readonly members: number;
  readonly bytes: number;
  readonly at: number;
  /** where what follows the directory begins */
  readonly endAt: number;
}

/** Signatures and lengths of the records at the end (APPNOTE.TXT 6.3.10: 4.3.14 to 4.3.16). */
const END = { signature: 0x06054b50, bytes: 22, mostComment: 0xffff } as const;
const LOCATOR_64 = { signature: 0x07064b50, bytes: 20 } as const;
const END_64 = { signature: 0x06064b50, bytes: 56 } as const;
/** Fields that are full stand for those of the record of zip64 (4.3.9.2). */
const FULL = 0xffffffff;
const FULL_COUNT = 0xffff;

const IN_PARTS = { trouble: 'zip-in-parts' } as const;

/** The end of a file → what its directory is; null where there is no such end. Throws ArchiveError on one part of several. */
export async function readEnd(file: Blob): Promise<End | null> {
  const tailAt = Math.max(0, file.size - END.bytes - END.mostComment - LOCATOR_64.bytes);
  const tail = new DataView(await file.slice(tailAt).arrayBuffer());
  for (let at = tail.byteLength - END.bytes; at >= 0; at--) {
    // The last record whose comment ends where the file ends.
    if (tail.getUint32(at, true) !== END.signature) continue;
    if (tail.getUint16(at + 20, true) !== tail.byteLength - at - END.bytes) continue;
    const members = tail.getUint16(at + 10, true);
    const [bytes, directoryAt] = [tail.getUint32(at + 12, true), tail.getUint32(at + 16, true)];
    if (members === FULL_COUNT || bytes === FULL || directoryAt === FULL) {
      const wide = await readWideEnd(file, tail, at - LOCATOR_64.bytes);
      if (wide !== null) return wide;
    }
    const oneDisk = tail.getUint32(at + 4, true) === 0 && tail.getUint16(at + 8, true) === members;
    if (!oneDisk) throw new ArchiveError(IN_PARTS);
    return { members, bytes, at: directoryAt, endAt: tailAt + at };
  }
  return null;
}

/** The record of zip64 that the locator in front of the end leads to; null where there is none. */
async function readWideEnd(file: Blob, tail: DataView, locatorAt: number): Promise<End | null> {
  if (locatorAt < 0 || tail.getUint32(locatorAt, true) !== LOCATOR_64.signature) return null;
  const endAt = Number(tail.getBigUint64(locatorAt + 8, true));
  if (endAt + END_64.bytes > file.size) return null;
  const record = new DataView(await file.slice(endAt, endAt + END_64.bytes).arrayBuffer());
  if (record.getUint32(0, true) !== END_64.signature) return null;
  const members = Number(record.getBigUint64(32, true));
  const oneDisk = record.getBigUint64(16, true) === 0n && Number(record.getBigUint64(24, true)) === members;
  if (!oneDisk) throw new ArchiveError(IN_PARTS);
  return {
    members,
    bytes: Number(record.getBigUint64(40, true)),
    at: Number(record.getBigUint64(48, true)),
    endAt,
  };
}
