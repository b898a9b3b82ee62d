export type * from './types.ts';
export { ArchiveError } from './errors.ts';
export { createTurns } from './turns.ts';
export { writeArchive } from './write.ts';
export type { ArchiveFile } from './write.ts';
import { checkLayout, refusalOf } from './checks.ts';
import { readDirectory } from './directory.ts';
import type { Directory, Listed } from './directory.ts';
import { ArchiveError } from './errors.ts';
import { readHead, readMember } from './member.ts';
import { foreignNames, memberName, sameName } from './names.ts';
import type { ArchiveLimits, ArchiveMember, Collection } from './types.ts';

/** 200 recordings of two minutes in 16 bits, and as much again. */
export const ARCHIVE_DEFAULTS: ArchiveLimits = {
  mostFileBytes: 2 ** 32 - 2 ** 20,
  mostMembers: 2000,
  mostMemberBytes: 768 * 2 ** 20,
  mostUnpackedBytes: 2 ** 32,
};

/** A class's week may be larger than what a zip without zip64 can say. */
const COLLECTION_LIMITS: ArchiveLimits = {
  ...ARCHIVE_DEFAULTS,
  mostFileBytes: 2 ** 33,
  mostUnpackedBytes: 2 ** 33,
};

/**
 * A zip from outside → the files in it, folders left out, in its own order; nothing is unpacked before `read()`. Refused
 * as a whole, with ArchiveError: what is larger than the limits or says more than it can hold, passwords, other packing
 * than deflate, names that lead elsewhere or are there twice, files laid over each other (APPNOTE.TXT 6.3.10).
 */
export async function openArchive(
  file: Blob,
  limits: Partial<ArchiveLimits> = {},
): Promise<readonly ArchiveMember[]> {
  const within = { ...ARCHIVE_DEFAULTS, ...limits };
  const directory = await readDirectory(file, within);
  const named = directory.listed.map((listed) => ({
    listed,
    name: memberName(listed.nameBytes, listed.flags),
  }));
  const known = new Set<string>();
  for (const { listed, name } of named) {
    const trouble = refusalOf(listed, name, within);
    if (trouble !== null) throw new ArchiveError(trouble);
    if (known.has(sameName(name))) throw new ArchiveError({ trouble: 'zip-twice', name });
    known.add(sameName(name));
  }
  checkLayout(directory, within);
  return membersOf(file, directory, named);
}

/**
 * A zip as people make them, on any system → the files that can be had from it, and the others by name, each with its reason.
 * Names are only to show: whatever code page and slashes they were written with, two alike told apart. Throws ArchiveError
 * where nothing can be had: damage, several parts, files laid over each other.
 */
export async function openCollection(file: Blob): Promise<Collection> {
  const directory = await readDirectory(file, COLLECTION_LIMITS);
  checkLayout(directory, COLLECTION_LIMITS);
  const names = foreignNames(directory.listed);
  const named = directory.listed.map((listed, at) => {
    const name = names[at]!;
    return { listed, name, trouble: refusalOf(listed, name, COLLECTION_LIMITS) };
  });
  return {
    members: membersOf(
      file,
      directory,
      named.filter(({ trouble }) => trouble === null),
    ),
    refused: named.flatMap(({ name, trouble }) => (trouble === null ? [] : [{ name, reason: trouble }])),
  };
}

function membersOf(
  file: Blob,
  { listed: all, at: directoryAt }: Directory,
  named: readonly { readonly listed: Listed; readonly name: string }[],
): readonly ArchiveMember[] {
  const starts = all.map((one) => one.headerAt).sort((a, b) => a - b);
  return named
    .filter(({ name }) => !name.endsWith('/'))
    .map(({ listed, name }) => {
      const place = { listed, name, endAt: starts.find((at) => at > listed.headerAt) ?? directoryAt };
      return {
        name,
        sizeBytes: listed.sizeBytes,
        head: (bytes) => readHead(file, place, bytes),
        read: () => readMember(file, place),
      };
    });
}

/** Whether a file says of itself that it is a zip: by its first bytes, not its name. */
export async function isArchive(file: Blob): Promise<boolean> {
  const [p, k, three, four] = new Uint8Array(await file.slice(0, 4).arrayBuffer());
  return p === 0x50 && k === 0x4b && three === 0x03 && four === 0x04;
}
