import { summarise } from '../../engine/index.ts';
import type { Report } from '../../engine/index.ts';
import { createDatabase, keepForGood, storageUse, type Migration } from '../database/index.ts';
import { decodeFile } from '../decode/index.ts';
import { encodeWav } from '../encode/index.ts';
import { MIGRATIONS } from './database.ts';
import type { JournalDatabase, JournalSchema } from './database.ts';
import { changeEntries, nameFor, putChanged, putEntry, readEntries, readRemembered } from './drawers.ts';
import type { Entry, History, NewAttempt, Outcome } from './types.ts';

export interface HistoryOptions {
  readonly databaseName: string;
  /** ms since 1970 */
  readonly now: () => number;
  readonly migrations: readonly Migration<JournalSchema>[];
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
  const database = createDatabase(databaseName, migrations, 'journal');

  return {
    keep: async (attempt) => {
      // Of 16 bits, which any program opens; its rounding lies 98 dB under full scale.
      const sound = encodeWav(attempt.sound);
      const entry = newEntry(attempt, now(), sound.byteLength);
      await database.write(['drawers', 'sounds'], async (store) => {
        await store('sounds').put(sound, entry.id);
        await putEntry(store('drawers'), entry);
      });
      return entry;
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

function newEntry(attempt: NewAttempt, whenMs: number, soundBytes: number): Entry {
  const { sound, intention, ...known } = attempt;
  return {
    id: nameFor(whenMs, crypto.randomUUID().slice(0, 8)),
    whenMs: Math.round(whenMs),
    state: 'unanalysed',
    ...known,
    ...(intention && { intention }),
    durationSec: (sound.channels[0]?.length ?? 0) / sound.sampleRateHz,
    soundBytes,
    reason: '',
    summary: null,
    deletedMs: null,
  };
}

function complete(database: JournalDatabase, id: string, outcome: Outcome): Promise<Entry | null> {
  const report: Report | null = 'report' in outcome ? outcome.report : null;
  return database.write(['drawers', 'reports'], async (store) => {
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
  await database.write(['drawers', 'reports', 'sounds'], async (store) => {
    await putChanged(store('drawers'), ids, () => null);
    for (const id of ids) {
      await store('reports').delete(id);
      await store('sounds').delete(id);
    }
  });
}
