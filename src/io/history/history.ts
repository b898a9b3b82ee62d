import { summarise } from '../../engine/index.ts';
import type { Report } from '../../engine/index.ts';
import { MIGRATIONS, openJournal, writing } from './database.ts';
import type { JournalDatabase, Migration } from './database.ts';
import { nameFor } from './drawers.ts';
import { asHistoryError } from './errors.ts';
import { changeEntries, putChanged, putEntry, readEntries } from './entries.ts';
import { packSound, unpackSound } from './sounds.ts';
import type { Entry, History, NewAttempt, Outcome } from './types.ts';

export interface HistoryOptions {
  readonly databaseName: string;
  /** ms since 1970 */
  readonly now: () => number;
  readonly migrations: readonly Migration[];
}
const HISTORY_DEFAULTS: HistoryOptions = {
  databaseName: 'evenfall-journal',
  now: () => Date.now(),
  migrations: MIGRATIONS,
};

/** How long deleted attempts can be brought back, ms. */
const UNDO_MS = 7 * 86_400_000;

/** The journal of this device, in IndexedDB; opened when it is first used. */
export function createHistory(options: Partial<HistoryOptions> = {}): History {
  const { databaseName, now, migrations } = { ...HISTORY_DEFAULTS, ...options };
  let opened: Promise<JournalDatabase> | null = null;

  const open = (): Promise<JournalDatabase> => {
    opened ??= openJournal(databaseName, migrations, () => (opened = null));
    opened.catch(() => (opened = null));
    return opened;
  };
  /** Every failure comes out as one that can be shown. */
  const using = async <T>(act: (database: JournalDatabase) => Promise<T>): Promise<T> => {
    try {
      return await act(await open());
    } catch (error) {
      throw asHistoryError(error);
    }
  };

  return {
    keep: (attempt) =>
      using(async (database) => {
        const sound = packSound(attempt.sound);
        const entry = newEntry(attempt, now(), sound.byteLength);
        await writing(database, ['drawers', 'sounds'], async (store) => {
          await store('sounds').put(sound, entry.id);
          await putEntry(store('drawers'), entry);
        });
        return entry;
      }),
    complete: (id, outcome) => using((database) => complete(database, id, outcome)),
    entries: () =>
      using(async (database) => {
        const all = await readEntries(database);
        const stale = all.filter(({ deletedMs }) => deletedMs !== null && deletedMs < now() - UNDO_MS);
        if (stale.length === 0) return all;
        await end(
          database,
          stale.map(({ id }) => id),
        );
        return readEntries(database);
      }),
    reports: (ids) =>
      using(async (database) => {
        const transaction = database.transaction('reports');
        const found = await Promise.all(ids.map((id) => transaction.store.get(id)));
        return found.filter((report) => report !== undefined);
      }),
    sound: (id) =>
      using(async (database) => {
        const bytes = await database.get('sounds', id);
        return bytes === undefined ? null : unpackSound(bytes);
      }),
    remove: (ids) =>
      using((database) => changeEntries(database, ids, (entry) => ({ ...entry, deletedMs: now() }))),
    restore: (ids) =>
      using((database) => changeEntries(database, ids, (entry) => ({ ...entry, deletedMs: null }))),
    forgetSound: (ids) =>
      using((database) =>
        writing(database, ['drawers', 'sounds'], async (store) => {
          await putChanged(store('drawers'), ids, (entry) => ({ ...entry, soundBytes: 0 }));
          for (const id of ids) await store('sounds').delete(id);
        }),
      ),
    remembered: () =>
      using(async (database) => {
        const [names, texts] = await Promise.all([
          database.getAllKeys('remembered'),
          database.getAll('remembered'),
        ]);
        return Object.fromEntries(names.map((name, index) => [name, JSON.parse(texts[index]!) as unknown]));
      }),
    remember: (name, value) =>
      using(async (database) => {
        const transaction = database.transaction('remembered', 'readwrite');
        const putting = transaction.store.put(JSON.stringify(value), name);
        // Not left to the browser, which commits only once it has answered: a page reloaded before that would forget it.
        transaction.commit();
        await Promise.all([putting, transaction.done]);
      }),
    storage: async () => {
      const estimate = await navigator.storage?.estimate?.();
      return {
        usedBytes: estimate?.usage ?? null,
        quotaBytes: estimate?.quota ?? null,
        persisted: (await navigator.storage?.persisted?.()) ?? false,
      };
    },
    persist: async () => (await navigator.storage?.persist?.()) ?? false,
    exportAll: (onProgress = () => undefined) =>
      using(async (database) => {
        const { exportJournal } = await import('./export.ts');
        return exportJournal(database, now(), onProgress);
      }),
    importFrom: (file, onProgress = () => undefined) =>
      using(async (database) => {
        const { importJournal } = await import('./import.ts');
        return importJournal(database, file, onProgress);
      }),
    close: async () => {
      const database = await opened?.catch(() => null);
      opened = null;
      database?.close();
    },
  };
}

function newEntry(attempt: NewAttempt, whenMs: number, soundBytes: number): Entry {
  const { sound, name, remarks, device, choice, targetBpm } = attempt;
  return {
    id: nameFor(whenMs, crypto.randomUUID().slice(0, 8)),
    whenMs: Math.round(whenMs),
    state: 'unanalysed',
    name,
    remarks,
    device,
    choice,
    targetBpm,
    durationSec: (sound.channels[0]?.length ?? 0) / sound.sampleRateHz,
    soundBytes,
    reason: '',
    summary: null,
    deletedMs: null,
  };
}

function complete(database: JournalDatabase, id: string, outcome: Outcome): Promise<Entry | null> {
  const report: Report | null = 'report' in outcome ? outcome.report : null;
  return writing(database, ['drawers', 'reports'], async (store) => {
    const [entry] = await putChanged(store('drawers'), [id], (before) => ({
      ...before,
      state: report === null ? 'no-report' : 'told',
      reason: 'reason' in outcome ? outcome.reason : '',
      summary: report === null ? null : summarise(report),
    }));
    if (entry === undefined) return null;
    if (report === null) await store('reports').delete(id);
    else await store('reports').put(report, id);
    return entry;
  });
}

/** Ends what was deleted, for good. */
async function end(database: JournalDatabase, ids: readonly string[]): Promise<void> {
  await writing(database, ['drawers', 'reports', 'sounds'], async (store) => {
    await putChanged(store('drawers'), ids, () => null);
    for (const id of ids) {
      await store('reports').delete(id);
      await store('sounds').delete(id);
    }
  });
}
