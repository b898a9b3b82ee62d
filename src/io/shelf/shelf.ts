import { openDB } from 'idb';
import type { DBSchema, IDBPDatabase } from 'idb';
import type { Review } from '../review/types.ts';
import { asShelfError } from './errors.ts';
import type { Shelf, Shelved } from './types.ts';

/** Version 1. A review lies in two parts, so that the list is read without its sounds. */
interface Schema extends DBSchema {
  heads: { key: string; value: Shelved };
  /** whole reviews by their name */
  reviews: { key: string; value: Review };
}
type Database = IDBPDatabase<Schema>;

export interface ShelfOptions {
  readonly databaseName: string;
  /** ms since 1970 */
  readonly now: () => number;
}
const SHELF_DEFAULTS: ShelfOptions = { databaseName: 'evenfall-shelf', now: () => Date.now() };

/** How long deleted reviews can be brought back, ms. */
const UNDO_MS = 7 * 86_400_000;

/** The reviews of this device, in IndexedDB; opened when it is first used. */
export function createShelf(options: Partial<ShelfOptions> = {}): Shelf {
  const { databaseName, now } = { ...SHELF_DEFAULTS, ...options };
  let opened: Promise<Database> | null = null;

  const open = (): Promise<Database> => {
    opened ??= openDB<Schema>(databaseName, 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore('heads', { keyPath: 'id' });
        fresh.createObjectStore('reviews', { keyPath: 'id' });
      },
      blocking: (_current, _blocked, event) => {
        (event.target as IDBDatabase).close();
        opened = null;
      },
      terminated: () => (opened = null),
    });
    opened.catch(() => (opened = null));
    return opened;
  };
  /** Every failure comes out as one that can be shown. */
  const using = async <T>(act: (database: Database) => Promise<T>): Promise<T> => {
    try {
      return await act(await open());
    } catch (error) {
      throw asShelfError(error);
    }
  };
  const change = (id: string, how: (head: Shelved) => Shelved): Promise<void> =>
    using(async (database) => {
      const writing = database.transaction('heads', 'readwrite');
      const head = await writing.store.get(id);
      if (head !== undefined) await writing.store.put(how(head));
      await writing.done;
    });

  return {
    all: () =>
      using(async (database) => {
        const heads = await database.getAll('heads');
        const stale = heads.filter(({ deletedMs }) => deletedMs !== null && deletedMs < now() - UNDO_MS);
        await end(
          database,
          stale.map(({ id }) => id),
        );
        return heads.filter((head) => !stale.includes(head)).sort(newestFirst);
      }),
    put: (review) => using((database) => put(database, review, now())),
    review: (id) => using(async (database) => (await database.get('reviews', id)) ?? null),
    markRead: (id) => change(id, (head) => ({ ...head, readMs: head.readMs ?? now() })),
    remove: (id) => change(id, (head) => ({ ...head, deletedMs: now() })),
    restore: (id) => change(id, (head) => ({ ...head, deletedMs: null })),
    close: async () => {
      const database = await opened?.catch(() => null);
      opened = null;
      database?.close();
    },
  };
}

/** Both parts in one go: all of it or, where there is no room, nothing. */
async function put(database: Database, review: Review, nowMs: number): Promise<Shelved> {
  const writing = database.transaction(['heads', 'reviews'], 'readwrite');
  const known = await writing.objectStore('heads').get(review.id);
  const newer = known === undefined || review.madeMs > known.madeMs;
  const head = newer ? headOf(review, known?.receivedMs ?? nowMs) : { ...known, deletedMs: null };
  try {
    if (newer) await writing.objectStore('reviews').put(review);
    await writing.objectStore('heads').put(head);
  } catch (error) {
    writing.done.catch(() => undefined);
    writing.abort();
    throw error;
  }
  await writing.done;
  return head;
}

function headOf(review: Review, receivedMs: number): Shelved {
  const { id, madeMs, teacher, words, attempts, assignment } = review;
  return {
    id,
    madeMs,
    receivedMs: Math.round(receivedMs),
    teacher,
    words,
    attempts: attempts.length,
    remarks: attempts.reduce((sum, { remarks }) => sum + remarks.length, 0),
    assignment,
    readMs: null,
    deletedMs: null,
  };
}

/** Ends what was deleted, for good. */
async function end(database: Database, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return;
  const writing = database.transaction(['heads', 'reviews'], 'readwrite');
  await Promise.all([
    ...ids.flatMap((id) => [
      writing.objectStore('heads').delete(id),
      writing.objectStore('reviews').delete(id),
    ]),
    writing.done,
  ]);
}

function newestFirst(a: Shelved, b: Shelved): number {
  return b.madeMs - a.madeMs || (a.id < b.id ? -1 : 1);
}
