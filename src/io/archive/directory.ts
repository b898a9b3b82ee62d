import { ArchiveError } from './errors.ts';
import { memberName, sameName } from './names.ts';
import type { ArchiveLimits } from './types.ts';

/** One line of the directory at the end of a zip. */
export interface Listed {
  readonly name: string;
  readonly flags: number;
  /** 0: as it is, 8: deflated */
  readonly method: number;
  readonly crc: number;
  readonly packedBytes: number;
  readonly sizeBytes: number;
  /** where its own header lies in the file */
  readonly headerAt: number;
}

/** Signatures and lengths of the records (APPNOTE.TXT 6.3.10: 4.3.12 and 4.3.16). */
const LISTED = { signature: 0x02014b50, bytes: 46 } as const;
const END = { signature: 0x06054b50, bytes: 22, mostComment: 0xffff } as const;

/** Bits 0, 6 and 13: encrypted; bit 5: patched; all others say how it was packed or spelt (4.4.4). */
const REFUSED_FLAGS = (1 << 0) | (1 << 5) | (1 << 6) | (1 << 13);
const METHODS: ReadonlySet<number> = new Set([0, 8]);
/** A field that is full stands for one in a record of zip64 (4.3.9.2). */
const FULL = 0xffffffff;

const NOT_WHOLE = 'It is no zip file, or it is damaged or cut short. Send or save it again.';

export interface Directory {
  readonly listed: readonly Listed[];
  /** where the directory begins, and the members end */
  readonly at: number;
}

/** Reads the directory of a zip and checks it against the limits, before anything is unpacked. Throws ArchiveError. */
export async function readDirectory(file: Blob, limits: ArchiveLimits): Promise<Directory> {
  if (file.size > limits.mostFileBytes) {
    throw new ArchiveError(
      `It is larger than ${inMegabytes(limits.mostFileBytes)} MB, which is not opened here.`,
    );
  }
  const tailAt = Math.max(0, file.size - END.bytes - END.mostComment);
  const tail = await viewOf(file, tailAt, file.size);
  const end = endRecord(tail);
  if (end === null) throw new ArchiveError(NOT_WHOLE);
  const { members, bytes, at } = end;
  if (members > limits.mostMembers) {
    throw new ArchiveError(`It holds ${members} files; up to ${limits.mostMembers} are opened.`);
  }
  if (at + bytes !== tailAt + end.endAt || bytes < members * LISTED.bytes) throw new ArchiveError(NOT_WHOLE);
  const listed = readListed(await viewOf(file, at, at + bytes), members);
  checkSizes(listed, limits);
  checkNames(listed);
  checkPlaces(listed, at);
  return { listed, at };
}

interface End {
  readonly members: number;
  readonly bytes: number;
  readonly at: number;
  /** of the record itself, in the tail */
  readonly endAt: number;
}

/** The last record whose comment ends where the file ends. */
function endRecord(tail: DataView): End | null {
  for (let endAt = tail.byteLength - END.bytes; endAt >= 0; endAt--) {
    if (tail.getUint32(endAt, true) !== END.signature) continue;
    if (tail.getUint16(endAt + 20, true) !== tail.byteLength - endAt - END.bytes) continue;
    const members = tail.getUint16(endAt + 10, true);
    const oneDisk = tail.getUint32(endAt + 4, true) === 0 && tail.getUint16(endAt + 8, true) === members;
    if (!oneDisk) throw new ArchiveError('It is one part of several. Pack it as one file.');
    const [bytes, at] = [tail.getUint32(endAt + 12, true), tail.getUint32(endAt + 16, true)];
    if (members === 0xffff || bytes === FULL || at === FULL)
      throw new ArchiveError('It is a zip64 file. Pack fewer or smaller files.');
    return { members, bytes, at, endAt };
  }
  return null;
}

function readListed(view: DataView, members: number): readonly Listed[] {
  const listed: Listed[] = [];
  let at = 0;
  for (let member = 0; member < members; member++) {
    if (at + LISTED.bytes > view.byteLength || view.getUint32(at, true) !== LISTED.signature)
      throw new ArchiveError(NOT_WHOLE);
    const nameBytes = view.getUint16(at + 28, true);
    const nextAt =
      at + LISTED.bytes + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    if (nextAt > view.byteLength) throw new ArchiveError(NOT_WHOLE);
    const flags = view.getUint16(at + 8, true);
    listed.push({
      name: memberName(new Uint8Array(view.buffer, view.byteOffset + at + LISTED.bytes, nameBytes), flags),
      flags,
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packedBytes: view.getUint32(at + 20, true),
      sizeBytes: view.getUint32(at + 24, true),
      headerAt: view.getUint32(at + 42, true),
    });
    at = nextAt;
  }
  if (at !== view.byteLength) throw new ArchiveError(NOT_WHOLE);
  return listed;
}

/** Deflate packs at most 1032 bytes into one (RFC 1951: 258 bytes in two bits at best), and sound and text far fewer. */
const MOST_RATIO = 200;
const SMALL_BYTES = 65_536;

function checkSizes(listed: readonly Listed[], limits: ArchiveLimits): void {
  let unpackedBytes = 0;
  for (const { flags, method, packedBytes, sizeBytes, headerAt, name } of listed) {
    if ((flags & REFUSED_FLAGS) !== 0)
      throw new ArchiveError('It is locked with a password. Pack it without one.');
    if (!METHODS.has(method))
      throw new ArchiveError('It is packed in a way that is not read here. Pack it as an ordinary zip.');
    if ([packedBytes, sizeBytes, headerAt].includes(FULL))
      throw new ArchiveError('It is a zip64 file. Pack fewer or smaller files.');
    if (method === 0 && packedBytes !== sizeBytes) throw new ArchiveError(NOT_WHOLE);
    if (sizeBytes > limits.mostMemberBytes)
      throw new ArchiveError(
        `${name} is larger than ${inMegabytes(limits.mostMemberBytes)} MB, which is not opened here.`,
      );
    if (sizeBytes > SMALL_BYTES && sizeBytes > packedBytes * MOST_RATIO)
      throw new ArchiveError(
        `${name} would unpack to far more than any recording or text. It is not opened.`,
      );
    unpackedBytes += sizeBytes;
  }
  if (unpackedBytes > limits.mostUnpackedBytes)
    throw new ArchiveError(
      `It would unpack to more than ${inMegabytes(limits.mostUnpackedBytes)} MB, which is not opened here.`,
    );
}

function checkNames(listed: readonly Listed[]): void {
  const known = new Set<string>();
  for (const { name } of listed) {
    const same = sameName(name);
    if (known.has(same)) throw new ArchiveError(`It holds two files named ${name}.`);
    known.add(same);
  }
}

/** No two members may share bytes: files laid over each other unpack to far more than they hold. */
function checkPlaces(listed: readonly Listed[], directoryAt: number): void {
  let freeFrom = 0;
  for (const { headerAt, packedBytes, name } of listed.toSorted((a, b) => a.headerAt - b.headerAt)) {
    if (headerAt < freeFrom) throw new ArchiveError('Its files lie over each other. It is not opened.');
    // At least its header and its name; what stands between is looked at when it is read.
    freeFrom = headerAt + 30 + name.length + packedBytes;
  }
  if (freeFrom > directoryAt) throw new ArchiveError(NOT_WHOLE);
}

const inMegabytes = (bytes: number): number => Math.floor(bytes / 2 ** 20);

async function viewOf(file: Blob, from: number, to: number): Promise<DataView> {
  return new DataView(await file.slice(from, to).arrayBuffer());
}
