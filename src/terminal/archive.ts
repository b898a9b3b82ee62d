import type { Archive, Shard } from './commands.ts';
import { usageProblem } from './problems.ts';
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
