import { createReadStream } from 'node:fs';
import { open, stat } from 'node:fs/promises';
import { createInterface } from 'node:readline';

/** A file of one JSON object a line that is gone on with. */
export interface LineFile {
  /** files that have their line already */
  readonly done: ReadonlySet<string>;
  /** Adds a line, whole or not at all as far as the system allows; what a kill left half is taken away when it is opened again. */
  add(line: string): Promise<void>;
  close(): Promise<void>;
}

/** Opens it where it stopped: whole lines stay, and a last one that is not whole goes. Rejects with the system's error. */
export async function openLines(path: string): Promise<LineFile> {
  const { done, bytes } = await linesIn(path);
  const file = await open(path, 'a');
  if (bytes < (await file.stat()).size) await file.truncate(bytes);
  return { done, add: (line) => file.appendFile(`${line}\n`), close: () => file.close() };
}

/** Names of the files that have whole lines, and where these end. */
async function linesIn(path: string): Promise<{ readonly done: Set<string>; readonly bytes: number }> {
  const done = new Set<string>();
  const size = (await stat(path).catch(() => null))?.size ?? 0;
  let bytes = 0;
  if (size === 0) return { done, bytes };
  for await (const line of createInterface({ input: createReadStream(path, 'utf8'), crlfDelay: Infinity })) {
    const end = bytes + Buffer.byteLength(line) + 1;
    const file = fileOf(line);
    // The last line has no end yet, or is no whole one.
    if (file === null || end > size) break;
    done.add(file);
    bytes = end;
  }
  return { done, bytes };
}

function fileOf(line: string): string | null {
  try {
    const { file } = JSON.parse(line) as { readonly file?: unknown };
    return typeof file === 'string' ? file : null;
  } catch {
    return null;
  }
}
