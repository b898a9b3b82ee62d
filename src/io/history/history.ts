import { createDatabase, keepForGood, storageUse } from '../database/index.ts';
import { decodeFile } from '../decode/index.ts';
import { encodeWav } from '../encode/index.ts';
import { MIGRATIONS } from './database.ts';
import type { JournalDatabase } from './database.ts';
import { changeEntries, findEntry, putChanged, putEntry, readEntries, readRemembered } from './drawers.ts';
import { completed, nameFor, newEntry } from './entry.ts';
import type { Entry, History, Outcome } from './types.ts';

/** How long deleted attempts can be brought back, ms. */
const UNDO_MS = 7 * 86_400_000;

/** The journal of this device, in IndexedDB; opened when it is first used. */
export function createHistory({
  databaseName = 'evenfall-journal',
  now = () => Date.now(),
  migrations = MIGRATIONS,
} = {}): History {
  const database = createDatabase(databaseName, migrations, 'journal');

  return {
    keep: async (attempt) => {
      // Of 16 bits, which any program opens; its rounding lies 98 dB under full scale.
      const sound = encodeWav(attempt.sound);
      const id = attempt.id ?? nameFor(now(), crypto.randomUUID().slice(0, 8));
      const entry = newEntry(attempt, id, sound.byteLength);
      return database.write(['drawers', 'sounds'], async (store) => {
        const before = await findEntry(store('drawers'), id);
        if (before !== undefined) return before;
        await store('sounds').put(sound, id);
        await putEntry(store('drawers'), entry);
        return entry;
      });
    },
    complete: (id, outcome) => complete(database, id, outcome),
    entries: async () => {
      const all = await database.use(readEntries);
      const stale = all.filter(({ deletedMs }) => deletedMs !== null && deletedMs < now() - UNDO_MS);
      if (stale.length === 0) return all;
      await end(
        database,
        stale.map(({ id }) => id),
      );
      return database.use(readEntries);
    },
    reports: (ids) =>
      database.use(async (open) => {
        const transaction = open.transaction('reports');
        const found = await Promise.all(ids.map((id) => transaction.store.get(id)));
        return found.filter((report) => report !== undefined);
      }),
    sound: (id) =>
      database.use(async (open) => {
        const bytes = await open.get('sounds', id);
        if (bytes === undefined) return null;
        const { channels, sampleRateHz } = await decodeFile(bytes, 'attempt.wav');
        return { channels, sampleRateHz };
      }),
    remove: (ids) => changeEntries(database, ids, (entry) => ({ ...entry, deletedMs: now() })),
    restore: (ids) => changeEntries(database, ids, (entry) => ({ ...entry, deletedMs: null })),
    forgetSound: (ids) =>
      database.write(['drawers', 'sounds'], async (store) => {
        await putChanged(store('drawers'), ids, (entry) => ({ ...entry, soundBytes: 0 }));
        for (const id of ids) await store('sounds').delete(id);
      }),
    remembered: () => database.use(readRemembered),
    remember: (name, value) => database.put('remembered', JSON.stringify(value), name),
    storage: storageUse,
    persist: keepForGood,
    exportAll: (onProgress = () => undefined, passages = []) =>
      database.use(async (open) => {
        const { exportJournal } = await import('./export.ts');
        return exportJournal(open, now(), passages, onProgress);
      }),
    importFrom: (file, onProgress = () => undefined) =>
      // Within one use, so that whatever fails can be shown.
      database.use(async () => {
        const { importJournal } = await import('./import.ts');
        return importJournal(database, file, onProgress);
      }),
    close: () => database.close(),
  };
}

function complete(database: JournalDatabase, id: string, outcome: Outcome): Promise<Entry | null> {
  return database.write(['drawers', 'reports'], async (store) => {
    const [entry] = await putChanged(store('drawers'), [id], (before) => completed(before, outcome));
    if (entry === undefined) return null;
    if ('report' in outcome) await store('reports').put(outcome.report, id);
    else await store('reports').delete(id);
    return entry;
  });
}

/** Ends what was deleted, for good. */
async function end(database: JournalDatabase, ids: readonly string[]): Promise<void> {
  await database.write(['drawers', 'reports', 'sounds'], async (store) => {
    await putChanged(store('drawers'), ids, () => null);
    for (const id of ids) {
      await store('reports').delete(id);
      await store('sounds').delete(id);
    }
  });
}
