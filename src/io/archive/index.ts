export type * from './types.ts';
export { ArchiveError } from './errors.ts';
export { createTurns } from './turns.ts';
export { writeArchive } from './write.ts';
export type { ArchiveFile } from './write.ts';
import { readDirectory } from './directory.ts';
import { readMember } from './member.ts';
import type { ArchiveLimits, ArchiveMember } from './types.ts';

/** 200 recordings of two minutes in 16 bits, and as much again. */
export const ARCHIVE_DEFAULTS: ArchiveLimits = {
  mostFileBytes: 2 ** 32 - 2 ** 20,
  mostMembers: 2000,
  mostMemberBytes: 768 * 2 ** 20,
  mostUnpackedBytes: 2 ** 32,
};

/**
 * A zip from outside → the files in it, folders left out, in its own order; nothing is unpacked before `read()`. Refused
 * as a whole, with ArchiveError: what is larger than the limits or says more than it can hold, passwords, zip64, other
 * packing than deflate, names that lead elsewhere or are there twice, files laid over each other (APPNOTE.TXT 6.3.10).
 */
export async function openArchive(
  file: Blob,
  limits: Partial<ArchiveLimits> = {},
): Promise<readonly ArchiveMember[]> {
  const { listed, at: directoryAt } = await readDirectory(file, { ...ARCHIVE_DEFAULTS, ...limits });
  const starts = listed.map((one) => one.headerAt).sort((a, b) => a - b);
  return listed
    .filter(({ name }) => !name.endsWith('/'))
    .map((one) => ({
      name: one.name,
      sizeBytes: one.sizeBytes,
      read: () => readMember(file, one, starts.find((at) => at > one.headerAt) ?? directoryAt),
    }));
}

/** Whether a file says of itself that it is a zip: by its first bytes, not its name. */
export async function isArchive(file: Blob): Promise<boolean> {
  const [p, k, three, four] = new Uint8Array(await file.slice(0, 4).arrayBuffer());
  return p === 0x50 && k === 0x4b && three === 0x03 && four === 0x04;
}
