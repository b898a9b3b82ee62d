import { openAsBlob } from 'node:fs';
import type { Dirent } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { basename, dirname, extname, join, relative, resolve, sep } from 'node:path';
import { ArchiveError, isArchive, openCollection } from '../../io/archive/index.ts';
import { recordedWhen } from '../../io/sorting/recorded-when.ts';
import { HEAD_BYTES, isHidden, isRecording } from '../../io/sorting/recordings.ts';
import type { Trouble } from '../../io/troubles/index.ts';
import { weightMb } from '../../io/sorting/weight.ts';
import type { Roster } from './students.ts';
import type { Recording } from './types.ts';

/** So many recordings at once at most: more are several weeks' worth, or the wrong folder. */
export const MOST_RECORDINGS = 200;

/** Recordings found, and what was passed over. */
export interface Collected {
  readonly recordings: readonly Recording[];
  /** files that are no recordings */
  readonly others: number;
  /** what cannot be opened, and why */
  readonly refused: readonly { readonly name: string; readonly reason: Trouble }[];
}

interface Gathering {
  readonly recordings: Recording[];
  readonly refused: { name: string; reason: Trouble }[];
  others: number;
  /** written by ourselves: not to be read */
  readonly own: ReadonlySet<string>;
  readonly roster: Roster;
}

/**
 * Folders, files and zips → the recordings in them, told by their content, in the order of their names. Hidden files and
 * `own` (folders and files that this run writes) are passed over. Throws the system's error where a path that was given is
 * not there or may not be read.
 */
export async function collect(
  given: readonly string[],
  own: readonly string[],
  roster: Roster,
): Promise<Collected> {
  const into: Gathering = {
    recordings: [],
    refused: [],
    others: 0,
    own: new Set(own.map((path) => resolve(path))),
    roster,
  };
  for (const path of given) {
    const found = await stat(path);
    if (found.isDirectory()) await folder(path, path, into);
    else {
      const shown = basename(path);
      await file({ path, pathForName: join(basename(dirname(resolve(path))), shown), shown }, into);
    }
  }
  return into;
}

async function folder(path: string, top: string, into: Gathering): Promise<void> {
  if (into.own.has(resolve(path))) return;
  const entries = await readdir(path, { withFileTypes: true });
  for (const entry of entries.sort(byName)) {
    if (isHidden(entry.name)) continue;
    const below = join(path, entry.name);
    // A link to a folder may lead round in a circle; a link to a file does no harm.
    if (entry.isDirectory()) await folder(below, top, into);
    else if (await isFile(entry, below)) {
      const shown = relative(top, below);
      await file({ path: below, pathForName: join(basename(resolve(top)), shown), shown }, into);
    }
  }
}

const byName = (a: Dirent, b: Dirent): number => a.name.localeCompare(b.name, 'en', { numeric: true });

async function isFile(entry: Dirent, path: string): Promise<boolean> {
  if (!entry.isSymbolicLink()) return entry.isFile();
  return (await stat(path).catch(() => null))?.isFile() ?? false;
}

/** A file found, or an archive. `pathForName`: with the folder that was given in front, from which the student's name is told. */
interface Found {
  readonly path: string;
  readonly pathForName: string;
  readonly shown: string;
}

async function file(found: Found, into: Gathering): Promise<void> {
  const { path } = found;
  if (into.own.has(resolve(path))) return;
  const blob = await openAsBlob(path);
  const { mtimeMs } = await stat(path);
  if (await isArchive(blob)) return archive(found, mtimeMs, blob, into);
  const head = new Uint8Array(await blob.slice(0, HEAD_BYTES).arrayBuffer());
  if (isRecording(head, found.shown)) {
    into.recordings.push(recordingOf(into, found, null, mtimeMs, weightMb(head, blob.size)));
  } else into.others += 1;
}

/** An archive stands for a folder of its name. */
async function archive(found: Found, mtimeMs: number, blob: Blob, into: Gathering): Promise<void> {
  const { path, shown } = found;
  const asFolder = found.pathForName.slice(0, found.pathForName.length - extname(path).length);
  try {
    const { members, refused } = await openCollection(blob);
    const inside = (name: string): string => name.split('/').join(sep);
    for (const { name, reason } of refused) into.refused.push({ name: join(shown, inside(name)), reason });
    for (const { name, sizeBytes, head: headOf } of members) {
      if (name.split('/').some(isHidden)) continue;
      // What cannot be looked at is meant for what it is called, and refused with its reason when it is read.
      const head = await headOf(HEAD_BYTES).catch(() => new Uint8Array());
      if (isRecording(head, name)) {
        const member = { path, pathForName: join(asFolder, inside(name)), shown: join(shown, inside(name)) };
        into.recordings.push(recordingOf(into, member, name, mtimeMs, weightMb(head, sizeBytes, true)));
      } else if (await isArchive(new Blob([head]))) {
        // One in another would multiply what a small file can unpack to.
        into.refused.push({
          name: join(shown, inside(name)),
          reason: { trouble: 'file-other', what: 'zip' },
        });
      } else into.others += 1;
    }
  } catch (cause) {
    if (!(cause instanceof ArchiveError)) throw cause;
    into.refused.push({ name: shown, reason: cause.trouble });
  }
}

function recordingOf(
  { roster }: Gathering,
  found: Found,
  member: string | null,
  mtimeMs: number,
  needsMb: number,
): Recording {
  const { path, pathForName, shown } = found;
  const student = roster.studentOf(pathForName);
  return {
    source: { path, member },
    name: shown,
    student,
    pianosCents: roster.pianosCentsOf(student),
    whenMs: recordedWhen(basename(shown)) ?? mtimeMs,
    needsMb,
  };
}
