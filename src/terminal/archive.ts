import { createHash } from 'node:crypto';
import type { Archive, Shard } from './commands.ts';
import type { Console } from './console.ts';
import { openLines } from './pile/line-file.ts';
import { unwritable, usageProblem } from './problems.ts';
import { bytesOf } from './sound.ts';

/** Options of commands that take an archive of any size, a line a recording. */
export const ARCHIVE_OPTIONS = {
  lines: { type: 'string' },
  shard: { type: 'string' },
  list: { type: 'string' },
} as const;

type ArchiveValues = { readonly [Option in keyof typeof ARCHIVE_OPTIONS]?: string | undefined };

/** What they say. Throws Problem (wrong usage). */
export function readArchive(values: ArchiveValues): Archive {
  const { lines, shard, list } = values;
  return { linesFile: lines ?? null, shard: readShard(shard, lines), listFile: list ?? null };
}

/** "3/16" → the third of sixteen parts. */
function readShard(text: string | undefined, lines: string | undefined): Shard | null {
  if (text === undefined) return null;
  const [, part, of] = /^(\d{1,5})\/(\d{1,5})$/.exec(text) ?? [];
  const shard = { part: Number(part), of: Number(of) };
  if (lines === undefined || !(shard.part >= 1 && shard.part <= shard.of))
    throw usageProblem((t) => t.noShard(text));
  return shard;
}

/** Paths, and those that a list holds, one a line. Throws Problem where it cannot be read. */
export async function withListed(
  paths: readonly string[],
  listFile: string | null,
): Promise<readonly string[]> {
  if (listFile === null) return paths;
  const text = new TextDecoder().decode(await bytesOf(listFile));
  return [...paths, ...text.split(/\r?\n/).filter((line) => line.trim() !== '')];
}

/** Whether a recording is in a part: by its name alone, so that it is in the same one whatever else there is. */
export function isIn(name: string, shard: Shard | null): boolean {
  if (shard === null) return true;
  const hash = createHash('sha256').update(name.normalize('NFC')).digest().readUInt32BE(0);
  return hash % shard.of === shard.part - 1;
}

/** Where lines go, one a recording. */
export interface Lines {
  /** whether a recording of that name has its line already, or is in another part */
  has(name: string): boolean;
  /** Throws Problem where it cannot be written. */
  add(line: object): Promise<void>;
  close(): Promise<void>;
}

/** Opens the file of lines where it stopped; '-' is standard output. Throws Problem where it cannot be written. */
export async function openArchive(file: string, shard: Shard | null, console: Console): Promise<Lines> {
  if (file === '-') {
    return {
      has: (name) => !isIn(name, shard),
      add: async (line) => console.out(JSON.stringify(line)),
      close: async () => undefined,
    };
  }
  const orUnwritable = async <T>(act: () => Promise<T>): Promise<T> => {
    try {
      return await act();
    } catch (cause) {
      throw unwritable(file, cause);
    }
  };
  const lines = await orUnwritable(() => openLines(file));
  return {
    has: (name) => !isIn(name, shard) || lines.done.has(name),
    add: (line) => orUnwritable(() => lines.add(JSON.stringify(line))),
    close: () => lines.close(),
  };
}
