import type { DBSchema } from 'idb';
import type { ExerciseChoice, Report } from '../../engine/index.ts';
import { createDatabase, laidFile, layFile, type LaidFile, type Migration } from '../database/index.ts';

/** A recording that somebody opened, as it came, and what was told of it. */
export interface OpenedFile {
  readonly id: string;
  /** the same of those that were opened together, or lay in one file */
  readonly group: string;
  readonly name: string;
  readonly file: Blob;
  /** what it was to be measured as; null: it was to be recognised */
  readonly choice: ExerciseChoice | null;
  /** null: it was not told yet, or nothing to report was heard */
  readonly report: Report | null;
}

/** The same without its sound. */
export type OpenedHead = Omit<OpenedFile, 'file'>;

/**
 * The recordings that were opened last, so that a page that is reloaded still has them and what it told. Nothing here rejects: where
 * the device keeps nothing, they last as long as the page.
 */
export interface Opened {
  /** a name that nothing else has, and no attempt of the journal; the later the name, the later in order */
  newId(): string;
  /** Puts one in; those that were opened longest ago are let go of. */
  keep(opened: OpenedFile): Promise<void>;
  /** What was told of one, as what it was measured. One that is not there stays away. */
  tell(id: string, report: Report, choice: ExerciseChoice | null): Promise<void>;
  read(id: string): Promise<OpenedFile | null>;
  /** One and those that belong to it, in order of their names. */
  together(id: string): Promise<readonly OpenedHead[]>;
  forget(id: string): Promise<void>;
}

/** So many are kept … */
const MOST = 100;
/** … of so many bytes in all; the one opened last is kept whatever its size. */
const MOST_BYTES = 256 * 2 ** 20;

interface Head extends OpenedHead {
  readonly bytes: number;
}

/** Version 1. Heads are read all at once, so the files lie apart. */
interface Schema extends DBSchema {
  heads: { key: string; value: Head };
  files: { key: string; value: LaidFile };
}
const MIGRATIONS: readonly Migration<Schema>[] = [
  (database) => {
    database.createObjectStore('heads', { keyPath: 'id' });
    database.createObjectStore('files');
  },
];

/** The last recordings that were opened on this device, in IndexedDB; opened when it is first used. */
export function createOpened(): Opened {
  const database = createDatabase('evenfall-opened', MIGRATIONS);
  let lastMs = 0;
  const quietly = <T>(act: () => Promise<T>): Promise<T | null> => act().catch(() => null);

  return {
    // In order of time, so that the oldest are those of the first names.
    newId: () => {
      lastMs = Math.max(lastMs + 1, Date.now());
      return `opened-${lastMs.toString(36).padStart(9, '0')}-${crypto.randomUUID().slice(0, 8)}`;
    },
    keep: async ({ file, ...about }) => {
      const head: Head = { ...about, bytes: file.size };
      const lay = (laid: LaidFile): Promise<void> =>
        database.write(['heads', 'files'], async (store) => {
          const heads = (await store('heads').getAll()).filter(({ id }) => id !== head.id);
          for (const id of tooOld([...heads, head])) {
            await store('heads').delete(id);
            await store('files').delete(id);
          }
          await store('files').put(laid, head.id);
          await store('heads').put(head);
        });
      await quietly(() => layFile(file, lay));
    },
    tell: async (id, report, choice) => {
      await quietly(() =>
        database.write(['heads'], async (store) => {
          const head = await store('heads').get(id);
          if (head !== undefined) await store('heads').put({ ...head, report, choice });
        }),
      );
    },
    read: (id) =>
      quietly(async () => {
        const head = await database.use((open) => open.get('heads', id));
        const file = laidFile(await database.use((open) => open.get('files', id)));
        if (head === undefined || file === null) return null;
        return { ...head, file };
      }),
    together: async (id) => {
      const heads = await quietly(() => database.use((open) => open.getAll('heads')));
      const group = heads?.find((head) => head.id === id)?.group;
      return (heads ?? []).filter((head) => group !== undefined && head.group === group);
    },
    forget: async (id) => {
      await quietly(() =>
        database.write(['heads', 'files'], async (store) => {
          await store('heads').delete(id);
          await store('files').delete(id);
        }),
      );
    },
  };
}

/** Heads, oldest first → the names of those for which there is no room beside the newer ones. */
function tooOld(heads: readonly Head[]): readonly string[] {
  let [count, bytes] = [0, 0];
  return heads.toReversed().flatMap((head) => {
    count += 1;
    bytes += head.bytes;
    return count === 1 || (count <= MOST && bytes <= MOST_BYTES) ? [] : [head.id];
  });
}
