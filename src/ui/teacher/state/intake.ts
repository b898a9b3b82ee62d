import { HEAD_BYTES, isHidden, isRecording, type Given } from '../../../io/teaching/index.ts';
import { EvenfallError, troubleOf, type Trouble } from '../../../io/troubles/index.ts';
import type { TeachingDevices } from './devices.ts';

/** As many recordings as are taken at a time. */
export const MOST_RECORDINGS = 200;
/** Deeper folders are not looked into; common practice, no source. */
const DEEPEST = 6;

/** What was dropped on the page, folders and all → its files, hidden ones left out. Read at once: the browser forgets a drop. */
export async function droppedFiles(items: DataTransferItemList): Promise<readonly Given[]> {
  const entries = [...items].map((item) => ({
    entry: item.webkitGetAsEntry?.() ?? null,
    file: item.getAsFile(),
  }));
  const found: Given[] = [];
  for (const { entry, file } of entries) {
    if (entry !== null) found.push(...(await filesBelow(entry, '', 0)));
    else if (file !== null && !isHiddenIn(file.name)) found.push(givenOf(file, file.name));
  }
  return found;
}

/** Files that were chosen, from a folder or one by one. */
export function chosenFiles(files: readonly File[]): readonly Given[] {
  return [...files]
    .map((file) => givenOf(file, file.webkitRelativePath === '' ? file.name : file.webkitRelativePath))
    .filter(({ path }) => !isHiddenIn(path));
}

async function filesBelow(entry: FileSystemEntry, folder: string, depth: number): Promise<readonly Given[]> {
  const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
  if (isHiddenIn(path) || depth > DEEPEST) return [];
  if (isFile(entry)) {
    const file = await new Promise<File>((resolve, reject) => entry.file(resolve, reject));
    return [givenOf(file, path)];
  }
  if (!isFolder(entry)) return [];
  const reader = entry.createReader();
  const found: Given[] = [];
  // A folder is told in parts, an empty one is the last.
  for (;;) {
    const part = await new Promise<FileSystemEntry[]>((resolve, reject) =>
      reader.readEntries(resolve, reject),
    );
    if (part.length === 0) return found;
    for (const one of part) found.push(...(await filesBelow(one, path, depth + 1)));
  }
}

const isFile = (entry: FileSystemEntry): entry is FileSystemFileEntry => entry.isFile;
const isFolder = (entry: FileSystemEntry): entry is FileSystemDirectoryEntry => entry.isDirectory;

function givenOf(file: File, path: string): Given {
  return { path, blob: file, writtenMs: file.lastModified > 0 ? file.lastModified : null };
}

/** Whether a file is the system's own affair, or lies in such a folder. */
export function isHiddenIn(path: string): boolean {
  return path.split('/').some(isHidden);
}

/** What files that were given turned out to be, archives unpacked. */
export interface Unpacked {
  readonly recordings: readonly Given[];
  /** files that mean to be attempts from a student, or a review */
  readonly reviews: readonly Given[];
  readonly refused: readonly { readonly given: Given; readonly reason: Trouble }[];
  /** no recordings: texts, pictures */
  readonly passedOver: number;
  /** files of archives beyond the limit; they were not looked at */
  readonly leftOut: number;
}

type Used = Pick<TeachingDevices, 'isArchive' | 'isReview' | 'openArchive'>;

/** Files as they were given → what they are, each told by its content, also in an archive. */
export async function unpacked(devices: Used, given: readonly Given[]): Promise<Unpacked> {
  const all: Unpacked[] = [];
  for (const one of given) all.push(await whatIs(devices, one, 'given'));
  return together(all);
}

async function whatIs(devices: Used, given: Given, from: 'given' | 'archive'): Promise<Unpacked> {
  const { isArchive, isReview } = devices;
  const { path, blob } = given;
  try {
    if (!(await isArchive(blob))) {
      const head = new Uint8Array(await blob.slice(0, HEAD_BYTES).arrayBuffer());
      return isRecording(head, path) ? { ...NOTHING, recordings: [given] } : { ...NOTHING, passedOver: 1 };
    }
    if (await isReview(blob)) return { ...NOTHING, reviews: [given] };
    // One in another would multiply what a small file can unpack to.
    if (from === 'archive') throw new EvenfallError({ trouble: 'file-other', what: 'zip' });
    return await opened(devices, given);
  } catch (error) {
    return { ...NOTHING, refused: [{ given, reason: troubleOf(error) }] };
  }
}

/** An archive stands for a folder of its name. */
async function opened(devices: Used, { path, blob, writtenMs }: Given): Promise<Unpacked> {
  const folder = path.replace(/\.zip$/i, '');
  const zip = await devices.openArchive(blob);
  const members = zip.members.filter(({ name }) => !isHiddenIn(name));
  const refusal = (name: string, reason: Trouble): Unpacked['refused'][number] => ({
    given: { path: `${folder}/${name}`, blob: new Blob(), writtenMs },
    reason,
  });
  const all: Unpacked[] = [];
  let recordings = 0;
  for (const { name, read } of members) {
    if (recordings === MOST_RECORDINGS) break;
    // One that is damaged leaves the others whole.
    const found = await read().then(
      (bytes) => {
        const given = { path: `${folder}/${name}`, blob: new Blob([bytes]), writtenMs };
        return whatIs(devices, given, 'archive');
      },
      (error: unknown) => ({ ...NOTHING, refused: [refusal(name, troubleOf(error))] }),
    );
    recordings += found.recordings.length;
    all.push(found);
  }
  const leftOut = members.length - all.length;
  const refused = zip.refused.map(({ name, reason }) => refusal(name, reason));
  const whole = together([...all, { ...NOTHING, refused }]);
  return { ...whole, leftOut };
}

const NOTHING: Unpacked = { recordings: [], reviews: [], refused: [], passedOver: 0, leftOut: 0 };

function together(all: readonly Unpacked[]): Unpacked {
  return {
    recordings: all.flatMap(({ recordings }) => recordings),
    reviews: all.flatMap(({ reviews }) => reviews),
    refused: all.flatMap(({ refused }) => refused),
    passedOver: all.reduce((sum, { passedOver }) => sum + passedOver, 0),
    leftOut: all.reduce((sum, { leftOut }) => sum + leftOut, 0),
  };
}
