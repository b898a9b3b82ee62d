import { openDB } from 'idb';
import type {
  DBSchema,
  IDBPDatabase,
  IDBPObjectStore,
  IDBPTransaction,
  StoreKey,
  StoreNames,
  StoreValue,
} from 'idb';
import { asStorageError, StorageError } from './errors.ts';
import type { Keeper } from '../troubles/index.ts';

export { StorageError } from './errors.ts';
export { laidFile, layFile } from './files.ts';
export type { LaidFile } from './files.ts';
export { keepForGood, storageUse } from './room.ts';
export type { StorageUse } from './room.ts';

type Upgrade<Schema extends DBSchema> = IDBPTransaction<Schema, StoreNames<Schema>[], 'versionchange'>;

/** Brings a database of one version to the next. Old ones are never changed: somebody's data are of that version. */
export type Migration<Schema extends DBSchema> = (
  database: IDBPDatabase<Schema>,
  upgrade: Upgrade<Schema>,
) => Promise<void> | void;

/** A store of a transaction that may write. */
export type Writable<Schema extends DBSchema> = <Name extends StoreNames<Schema>>(
  name: Name,
) => IDBPObjectStore<Schema, StoreNames<Schema>[], Name, 'readwrite'>;

/** One database of the browser (IndexedDB), opened when it is first used. What fails, rejects with StorageError. */
export interface Database<Schema extends DBSchema> {
  /** Reads. */
  use<T>(act: (database: IDBPDatabase<Schema>) => Promise<T>): Promise<T>;
  /** Writes into some stores: all of it or, where any of it fails, nothing. */
  write<T>(names: readonly StoreNames<Schema>[], act: (store: Writable<Schema>) => Promise<T>): Promise<T>;
  /**
   * Puts one value in, and waits for nothing: other than what `write` does, it is there even if the page is left at once. (The browser
   * by itself commits only after it has answered.)
   */
  put<Name extends StoreNames<Schema>>(
    name: Name,
    value: StoreValue<Schema, Name>,
    key?: StoreKey<Schema, Name>,
  ): Promise<void>;
  close(): Promise<void>;
}

/**
 * `migrations`: the nth brings version n to version n + 1; 0 is no database at all. Without a `keeper`, failures come out as the
 * browser has them.
 */
export function createDatabase<Schema extends DBSchema>(
  name: string,
  migrations: readonly Migration<Schema>[],
  keeper: Keeper | null = null,
): Database<Schema> {
  let opened: Promise<IDBPDatabase<Schema>> | null = null;
  const open = (): Promise<IDBPDatabase<Schema>> => {
    opened ??= opening(name, migrations, () => (opened = null));
    opened.catch(() => (opened = null));
    return opened;
  };
  const use = async <T>(act: (database: IDBPDatabase<Schema>) => Promise<T>): Promise<T> => {
    try {
      return await act(await open());
    } catch (error) {
      throw keeper === null ? error : asStorageError(error, keeper);
    }
  };
  return {
    use,
    write: (names, act) => use((database) => writing(database, names, act)),
    put: (store, value, key) =>
      use(async (database) => {
        const transaction = database.transaction(store, 'readwrite');
        const putting = transaction.store.put(value, key);
        transaction.commit();
        await Promise.all([putting, transaction.done]);
      }),
    close: async () => {
      const database = await opened?.catch(() => null);
      opened = null;
      database?.close();
    },
  };
}

/** Opens it, brought to the newest version step by step; all steps or none. `onGone`: another page needs it closed. */
function opening<Schema extends DBSchema>(
  name: string,
  migrations: readonly Migration<Schema>[],
  onGone: () => void,
): Promise<IDBPDatabase<Schema>> {
  let refuse: (error: StorageError) => void = () => undefined;
  const refused = new Promise<never>((_, reject) => (refuse = reject));
  let failure: unknown;
  const found = openDB<Schema>(name, migrations.length, {
    upgrade: (database, oldVersion, _newVersion, upgrade) => {
      // idb does not look at what a promise from here comes to: half a migration would be kept.
      migrateAll(migrations.slice(oldVersion), database, upgrade as Upgrade<Schema>).catch(
        (error: unknown) => {
          failure = error;
          upgrade.done.catch(() => undefined);
          upgrade.abort();
        },
      );
    },
    blocked: () => refuse(new StorageError({ trouble: 'other-window-older' })),
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      onGone();
    },
    terminated: onGone,
  });
  return Promise.race([found, refused]).catch((error: unknown) => {
    throw failure ?? error;
  });
}

async function migrateAll<Schema extends DBSchema>(
  migrations: readonly Migration<Schema>[],
  database: IDBPDatabase<Schema>,
  upgrade: Upgrade<Schema>,
): Promise<void> {
  for (const migrate of migrations) await migrate(database, upgrade);
}

async function writing<Schema extends DBSchema, T>(
  database: IDBPDatabase<Schema>,
  names: readonly StoreNames<Schema>[],
  act: (store: Writable<Schema>) => Promise<T>,
): Promise<T> {
  const transaction = database.transaction([...names], 'readwrite');
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
