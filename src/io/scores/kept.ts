import type { DBSchema } from 'idb';
import { exerciseOf, passageId } from '../../engine/index.ts';
import type { ExerciseChoice } from '../../engine/index.ts';
import { createDatabase, type Migration } from '../database/index.ts';

/** A passage and when it came. */
interface Row {
  readonly id: string;
  readonly addedMs: number;
  readonly choice: ExerciseChoice;
}

/** Version 1. */
interface Schema extends DBSchema {
  passages: { key: string; value: Row };
}
const MIGRATIONS: readonly Migration<Schema>[] = [
  (database) => void database.createObjectStore('passages', { keyPath: 'id' }),
];

/**
 * The passages of one's own on this device. Nothing here rejects: where the device keeps nothing, they last as long as the page. One that
 * is there already is put in anew, since its notes decide which it is.
 */
export interface KeptPassages {
  /** in the order in which they came */
  all(): Promise<readonly ExerciseChoice[]>;
  put(choice: ExerciseChoice): Promise<void>;
  remove(choice: ExerciseChoice): Promise<void>;
}

export function createKeptPassages(): KeptPassages {
  const database = createDatabase('evenfall-passages', MIGRATIONS);
  const quietly = <T>(act: () => Promise<T>): Promise<T | null> => act().catch(() => null);
  return {
    all: async () => {
      const rows = (await quietly(() => database.use((open) => open.getAll('passages')))) ?? [];
      return [...rows]
        .sort((a, b) => a.addedMs - b.addedMs)
        .flatMap(({ choice }) => (exerciseOf(choice) === null ? [] : [choice]));
    },
    put: async (choice) => {
      const row = { id: passageId(choice.passage!), addedMs: Date.now(), choice };
      await quietly(() => database.put('passages', row));
    },
    remove: async ({ passage }) => {
      await quietly(() =>
        database.write(['passages'], (store) => store('passages').delete(passageId(passage!))),
      );
    },
  };
}
