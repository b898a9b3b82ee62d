import type { StoreValue } from 'idb';
import { ALL_STORES, openTeaching } from './database.ts';
import type { TeachingDatabase, TeachingSchema } from './database.ts';
import { asTeachingError } from './errors.ts';
import type { NewPlaying, TeachingStore } from './types.ts';

export interface TeachingStoreOptions {
  readonly databaseName: string;
  /** ms since 1970 */
  readonly now: () => number;
}
const TEACHING_DEFAULTS: TeachingStoreOptions = {
  databaseName: 'evenfall-teaching',
  now: () => Date.now(),
};

const NOTHING_SAID = { remarks: [], corrections: [] } as const;
const NO_REPORTS = { own: null, chosen: null } as const;
/** Letters of a time in base 36, as names of attempts in the journal have them. */
const TIME_LETTERS = 9;

/** The recordings of students on this device, in IndexedDB; opened when it is first used. */
export function createTeachingStore(options: Partial<TeachingStoreOptions> = {}): TeachingStore {
  const { databaseName, now } = { ...TEACHING_DEFAULTS, ...options };
  let opened: Promise<TeachingDatabase> | null = null;
  const open = (): Promise<TeachingDatabase> => {
    opened ??= openTeaching(databaseName, () => (opened = null));
    opened.catch(() => (opened = null));
    return opened;
  };
  /** Every failure comes out as one that can be shown. */
  const using = async <T>(act: (database: TeachingDatabase) => Promise<T>): Promise<T> => {
    try {
      return await act(await open());
    } catch (error) {
      throw asTeachingError(error);
    }
  };
  const end: TeachingStore['end'] = ({ students = [], files = [], playings = [] }) =>
    using(async (database) => {
      const transaction = database.transaction(ALL_STORES, 'readwrite');
      const clear = (store: (typeof ALL_STORES)[number], ids: readonly string[]): Promise<void>[] =>
        ids.map((id) => transaction.objectStore(store).delete(id));
      await Promise.all([
        ...clear('students', students),
        ...clear('files', files),
        ...clear('waiting', files),
        ...(['playings', 'reports', 'sounds', 'said'] as const).flatMap((store) => clear(store, playings)),
        transaction.done,
      ]);
    });

  return {
    newId: () =>
      `${Math.max(0, Math.round(now())).toString(36).padStart(TIME_LETTERS, '0')}-${crypto.randomUUID().slice(0, 8)}`,
    load: () =>
      using(async (database) => {
        const [students, files, playings] = await Promise.all([
          database.getAll('students'),
          database.getAll('files'),
          database.getAll('playings'),
        ]);
        const gone = <T extends { readonly id: string; readonly deletedMs: number | null }>(
          all: readonly T[],
        ) => all.filter(({ deletedMs }) => deletedMs !== null).map(({ id }) => id);
        const ended = { students: gone(students), files: gone(files), playings: gone(playings) };
        if (Object.values(ended).some((ids) => ids.length > 0)) await end(ended);
        const left = <T extends { readonly deletedMs: number | null }>(all: readonly T[]): readonly T[] =>
          all.filter(({ deletedMs }) => deletedMs === null);
        return { students: left(students), files: left(files), playings: left(playings) };
      }),
    addFile: (file, blob) =>
      using(async (database) => {
        const transaction = database.transaction(['files', 'waiting'], 'readwrite');
        await Promise.all([
          transaction.objectStore('files').put(file),
          transaction.objectStore('waiting').put(blob, file.id),
          transaction.done,
        ]);
      }),
    blob: (fileId) => using(async (database) => (await database.get('waiting', fileId)) ?? null),
    finish: (file, found) =>
      using(async (database) => {
        const transaction = database.transaction(ALL_STORES, 'readwrite');
        await Promise.all([
          transaction.objectStore('files').put(file),
          transaction.objectStore('waiting').delete(file.id),
          ...found.flatMap(({ playing, reports, sound }) => [
            transaction.objectStore('playings').put(playing),
            transaction.objectStore('reports').put(reports, playing.id),
            ...(sound === null ? [] : [transaction.objectStore('sounds').put(sound, playing.id)]),
          ]),
          transaction.done,
        ]);
      }),
    putFiles: (files) => using((database) => putAll(database, 'files', files)),
    putStudents: (students) => using((database) => putAll(database, 'students', students)),
    putPlayings: (playings) => using((database) => putAll(database, 'playings', playings)),
    addPlayings: (found: readonly NewPlaying[]) =>
      using(async (database) => {
        const transaction = database.transaction(['playings', 'reports', 'sounds'], 'readwrite');
        await Promise.all([
          ...found.flatMap(({ playing, reports, sound }) => [
            transaction.objectStore('playings').put(playing),
            transaction.objectStore('reports').put(reports, playing.id),
            ...(sound === null ? [] : [transaction.objectStore('sounds').put(sound, playing.id)]),
          ]),
          transaction.done,
        ]);
      }),
    reports: (id) => using(async (database) => (await database.get('reports', id)) ?? NO_REPORTS),
    putReports: (id, reports) => using(async (database) => void (await database.put('reports', reports, id))),
    sound: (id) => using(async (database) => (await database.get('sounds', id)) ?? null),
    said: (id) => using(async (database) => (await database.get('said', id)) ?? NOTHING_SAID),
    putSaid: (id, said) => using(async (database) => void (await database.put('said', said, id))),
    end,
    room: async () => {
      const estimate = await navigator.storage?.estimate?.();
      return { usedBytes: estimate?.usage ?? null, quotaBytes: estimate?.quota ?? null };
    },
    close: async () => {
      const database = await opened?.catch(() => null);
      opened = null;
      database?.close();
    },
  };
}

/** Puts several in: all of them or, where one fails, none. */
async function putAll<Name extends 'students' | 'files' | 'playings'>(
  database: TeachingDatabase,
  name: Name,
  values: readonly StoreValue<TeachingSchema, Name>[],
): Promise<void> {
  const transaction = database.transaction(name, 'readwrite');
  await Promise.all([...values.map((value) => transaction.store.put(value)), transaction.done]);
}
