import { isHidden } from '../../io/teaching/index.ts';
import type { Given } from '../../io/teaching/index.ts';

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
export function chosenFiles(files: FileList): readonly Given[] {
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
