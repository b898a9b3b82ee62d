import { createHash } from 'node:crypto';
import type { Shard } from './commands.ts';
import type { Console } from './console.ts';
import { openLines } from './pile/line-file.ts';
import { unwritable } from './problems.ts';

/** Whether a recording is in a part: by its name alone, so that it is in the same one whatever else there is. */
function isIn(name: string, shard: Shard | null): boolean {
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
