import { openDB } from 'idb';
import type { DBSchema, IDBPDatabase, IDBPObjectStore, IDBPTransaction, StoreNames } from 'idb';
import type { Report } from '../../engine/index.ts';
import { HistoryError } from './errors.ts';

/** The journal's stores, version 1. */
export interface JournalSchema extends DBSchema {
  /** entries of thirty days in order of time, packed (packing.ts): read one by one, 36 500 entries took half a second */
  drawers: { key: number; value: string };
  /** by the attempt's name */
  reports: { key: string; value: Report };
  /** WAV, 16 bit, by the attempt's name */
  sounds: { key: string; value: ArrayBuffer };
  /** small things by their name, as JSON text */
  remembered: { key: string; value: string };
}

export type JournalDatabase = IDBPDatabase<JournalSchema>;
type Upgrade = IDBPTransaction<JournalSchema, StoreNames<JournalSchema>[], 'versionchange'>;

/** Brings a database of one version to the next. Old ones are never changed: somebody's journal is of that version. */
export type Migration = (database: JournalDatabase, upgrade: Upgrade) => Promise<void> | void;

/** The nth brings version n to version n + 1; 0 is no database at all. */
export const MIGRATIONS: readonly Migration[] = [
  (database) => {
    database.createObjectStore('drawers');
    database.createObjectStore('reports');
    database.createObjectStore('sounds');
    database.createObjectStore('remembered');
  },
];

/** Opens the journal, brought to the newest version step by step; all steps or none. `onGone`: another page needs it closed. */
export async function openJournal(
  name: string,
  migrations: readonly Migration[],
  onGone: () => void,
): Promise<JournalDatabase> {
  let refuse: (error: HistoryError) => void = () => undefined;
  const refused = new Promise<never>((_, reject) => (refuse = reject));
  let failure: unknown;
  const opening = openDB<JournalSchema>(name, migrations.length, {
    upgrade: (database, oldVersion, _newVersion, upgrade) => {
      // idb does not look at what a promise from here comes to: half a migration would be kept.
      migrateAll(migrations.slice(oldVersion), database, upgrade as Upgrade).catch((error: unknown) => {
        failure = error;
        upgrade.done.catch(() => undefined);
        upgrade.abort();
      });
    },
    blocked: () =>
      refuse(
        new HistoryError(
          'Another window has an older version of this page open. Close it, then open this page again.',
        ),
      ),
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      onGone();
    },
    terminated: onGone,
  });
  return Promise.race([opening, refused]).catch((error: unknown) => {
    throw failure ?? error;
  });
}

async function migrateAll(
  migrations: readonly Migration[],
  database: JournalDatabase,
  upgrade: Upgrade,
): Promise<void> {
  for (const migrate of migrations) await migrate(database, upgrade);
}

/** A store of a transaction that may write. */
type Writable = <Name extends StoreNames<JournalSchema>>(
  name: Name,
) => IDBPObjectStore<JournalSchema, StoreNames<JournalSchema>[], Name, 'readwrite'>;

/** Writes into some stores: all of it or, where any of it fails, nothing. */
export async function writing<T>(
  database: JournalDatabase,
  names: StoreNames<JournalSchema>[],
  act: (store: Writable) => Promise<T>,
): Promise<T> {
  const transaction = database.transaction(names, 'readwrite');
  const acting = act((name) => transaction.objectStore(name)).catch((error: unknown) => {
    try {
      transaction.abort();
    } catch {
      // It has ended already, for the same reason.
    }
    throw error;
  });
  const [result] = await Promise.all([acting, transaction.done]);
  return result;
}
