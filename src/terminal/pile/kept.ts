import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';
import type { FileBytes } from '../../io/decode/index.ts';
import type { Sorted } from './types.ts';

/** Where results of earlier runs lie: the user's own cache folder (XDG Base Directory Specification 0.8). */
export function keptFolder(env: NodeJS.ProcessEnv): string {
  const cache = env['XDG_CACHE_HOME'];
  // The specification has paths that are not absolute ignored.
  const root = cache !== undefined && isAbsolute(cache) ? cache : join(homedir(), '.cache');
  return join(root, 'evenfall', 'desk');
}

/** Bytes read at a time. */
const READ_BYTES = 1 << 21;

/** A recording's bytes → what tells them from all others: SHA-256. */
export async function printOf(file: FileBytes): Promise<string> {
  const hash = createHash('sha256');
  for (let at = 0; at < file.size; at += READ_BYTES) hash.update(await file.read(at, at + READ_BYTES));
  return hash.digest('hex');
}

/** A recording's print, and all else that its result depends on → the name under which the result is kept. */
export function keptName(print: string, besides: readonly unknown[]): string {
  return createHash('sha256').update(JSON.stringify(besides)).update(print).digest('hex');
}

/** A result kept under a name; null where there is none that can be read. */
export async function readKept(folder: string, name: string): Promise<Sorted | null> {
  try {
    const kept: unknown = JSON.parse(await readFile(join(folder, `${name}.json`), 'utf8'));
    return isSorted(kept) ? kept : null;
  } catch {
    return null;
  }
}

/** Keeps a result. That it cannot be kept (no room, no rights) does not matter now: it is done anew next time. */
export async function keep(folder: string, name: string, sorted: Sorted): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
    const path = join(folder, `${name}.json`);
    // Moved into place: nobody meets half a result, though several write at once.
    const aside = `${path}.${process.pid}`;
    await writeFile(aside, JSON.stringify(sorted));
    await rename(aside, path);
  } catch {
    return;
  }
}

/** The file is our own, but disks and people change files. */
function isSorted(value: unknown): value is Sorted {
  if (typeof value !== 'object' || value === null) return false;
  const { durationSec, remarks, attempts, reason, print } = value as Partial<Record<keyof Sorted, unknown>>;
  return (
    typeof durationSec === 'number' &&
    typeof print === 'string' &&
    (typeof reason === 'string' || typeof reason === 'object') &&
    Array.isArray(remarks) &&
    Array.isArray(attempts)
  );
}
