import type { DBSchema } from 'idb';
import { createDatabase, type Database, type Migration } from '../database/index.ts';
import type { Review } from '../review/types.ts';
import type { Shelf, Shelved } from './types.ts';

/** Version 1. A review lies in two parts, so that the list is read without its sounds. */
interface Schema extends DBSchema {
  heads: { key: string; value: Shelved };
  /** whole reviews by their name */
  reviews: { key: string; value: Review };
}
const MIGRATIONS: readonly Migration<Schema>[] = [
  (database) => {
    database.createObjectStore('heads', { keyPath: 'id' });
    database.createObjectStore('reviews', { keyPath: 'id' });
  },
];

/** How long deleted reviews can be brought back, ms. */
const UNDO_MS = 7 * 86_400_000;

/** The reviews of this device, in IndexedDB; opened when it is first used. */
export function createShelf({ databaseName = 'evenfall-shelf', now = () => Date.now() } = {}): Shelf {
  const database = createDatabase(databaseName, MIGRATIONS, 'reviews');
  const change = (id: string, how: (head: Shelved) => Shelved): Promise<void> =>
    database.write(['heads'], async (store) => {
      const head = await store('heads').get(id);
      if (head !== undefined) await store('heads').put(how(head));
    });

  return {
    all: async () => {
      const heads = await database.use((open) => open.getAll('heads'));
      const stale = heads.filter(({ deletedMs }) => deletedMs !== null && deletedMs < now() - UNDO_MS);
      if (stale.length > 0) await end(database, stale);
      return heads.filter((head) => !stale.includes(head)).sort(newestFirst);
    },
    put: (review) => put(database, review, now()),
    review: async (id) => (await database.use((open) => open.get('reviews', id))) ?? null,
    markRead: (id) => change(id, (head) => ({ ...head, readMs: head.readMs ?? now() })),
    remove: (id) => change(id, (head) => ({ ...head, deletedMs: now() })),
    restore: (id) => change(id, (head) => ({ ...head, deletedMs: null })),
    close: () => database.close(),
  };
}

/** Both parts in one go. */
function put(database: Database<Schema>, review: Review, nowMs: number): Promise<Shelved> {
  return database.write(['heads', 'reviews'], async (store) => {
    const known = await store('heads').get(review.id);
    const newer = known === undefined || review.madeMs > known.madeMs;
    const head = newer ? headOf(review, known?.receivedMs ?? nowMs) : { ...known, deletedMs: null };
    if (newer) await store('reviews').put(review);
    await store('heads').put(head);
    return head;
  });
}

function headOf(review: Review, receivedMs: number): Shelved {
  const { id, madeMs, teacher, words, attempts, assignment } = review;
  return {
    id,
    madeMs,
    receivedMs: Math.round(receivedMs),
    teacher,
    words,
    attempts: attempts.filter(({ exampleFor }) => exampleFor === undefined).length,
    remarks: attempts.reduce((sum, { remarks }) => sum + remarks.length, 0),
    assignment,
    readMs: null,
    deletedMs: null,
  };
}

/** Ends what was deleted, for good. */
async function end(database: Database<Schema>, heads: readonly Shelved[]): Promise<void> {
  await database.write(['heads', 'reviews'], (store) =>
    Promise.all(heads.flatMap(({ id }) => [store('heads').delete(id), store('reviews').delete(id)])),
  );
}

function newestFirst(a: Shelved, b: Shelved): number {
  return b.madeMs - a.madeMs || (a.id < b.id ? -1 : 1);
}
