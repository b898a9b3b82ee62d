import type { DBSchema, StoreNames } from 'idb';
import { createDatabase, type Migration, type Writable } from '../database/index.ts';
import type { SoundFile } from '../review/types.ts';
import type { GivenFile, NewPlaying, Playing, Reports, Said, Student, TeachingStore } from './types.ts';

/** The stores, version 1; sounds, reports and remarks lie apart by the attempt's name, so that the list is read quickly. */
interface Schema extends DBSchema {
  students: { key: string; value: Student };
  files: { key: string; value: GivenFile };
  /** recordings that wait to be sorted, by the file's name */
  waiting: { key: string; value: Blob };
  playings: { key: string; value: Playing };
  reports: { key: string; value: Reports };
  sounds: { key: string; value: SoundFile };
  said: { key: string; value: Said };
}
const MIGRATIONS: readonly Migration<Schema>[] = [
  (database) => {
    for (const store of LISTED) database.createObjectStore(store, { keyPath: 'id' });
    for (const store of ['waiting', 'reports', 'sounds', 'said'] as const) database.createObjectStore(store);
  },
];
const LISTED = ['students', 'files', 'playings'] as const;
/** all that is kept of an attempt */
const OF_PLAYINGS = ['playings', 'reports', 'sounds', 'said'] as const;
const ALL_STORES = ['students', 'files', 'waiting', ...OF_PLAYINGS] as const;

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

/** The recordings of students on this device, in IndexedDB. */
export function createTeachingStore(options: Partial<TeachingStoreOptions> = {}): TeachingStore {
  const { databaseName, now } = { ...TEACHING_DEFAULTS, ...options };
  const database = createDatabase(databaseName, MIGRATIONS, 'recordings');
  const end: TeachingStore['end'] = ({ students = [], files = [], playings = [] }) =>
    database.write(ALL_STORES, async (store) => {
      const clear = (from: readonly StoreNames<Schema>[], ids: readonly string[]): readonly Promise<void>[] =>
        from.flatMap((name) => ids.map((id) => store(name).delete(id)));
      await Promise.all([
        ...clear(['students'], students),
        ...clear(['files', 'waiting'], files),
        ...clear(OF_PLAYINGS, playings),
      ]);
    });
  /** All of them or, where one fails, none. */
  const putAll = <Name extends (typeof LISTED)[number]>(
    name: Name,
    values: readonly Schema[Name]['value'][],
  ): Promise<void> =>
    database.write([name], async (store) => {
      await Promise.all(values.map((value) => store(name).put(value)));
    });

  return {
    newId: () =>
      `${Math.max(0, Math.round(now())).toString(36).padStart(TIME_LETTERS, '0')}-${crypto.randomUUID().slice(0, 8)}`,
    load: async () => {
      const [students, files, playings] = await database.use((open) =>
        Promise.all([open.getAll('students'), open.getAll('files'), open.getAll('playings')]),
      );
      const ended = { students: gone(students), files: gone(files), playings: gone(playings) };
      if (Object.values(ended).some((ids) => ids.length > 0)) await end(ended);
      return { students: left(students), files: left(files), playings: left(playings) };
    },
    addFile: (file, blob) =>
      database.write(['files', 'waiting'], async (store) => {
        await Promise.all([store('files').put(file), store('waiting').put(blob, file.id)]);
      }),
    blob: async (fileId) => (await database.use((open) => open.get('waiting', fileId))) ?? null,
    finish: (file, found) =>
      database.write(ALL_STORES, async (store) => {
        await Promise.all([
          store('files').put(file),
          store('waiting').delete(file.id),
          ...putPlayings(store, found),
        ]);
      }),
    putFiles: (files) => putAll('files', files),
    putStudents: (students) => putAll('students', students),
    putPlayings: (playings) => putAll('playings', playings),
    addPlayings: (found) =>
      database.write(OF_PLAYINGS, async (store) => {
        await Promise.all(putPlayings(store, found));
      }),
    reports: async (id) => (await database.use((open) => open.get('reports', id))) ?? NO_REPORTS,
    putReports: (id, reports) => database.put('reports', reports, id),
    sound: async (id) => (await database.use((open) => open.get('sounds', id))) ?? null,
    said: async (id) => (await database.use((open) => open.get('said', id))) ?? NOTHING_SAID,
    changeSaid: (id, change) =>
      database.write(['said'], async (store) => {
        const said = change((await store('said').get(id)) ?? NOTHING_SAID);
        await store('said').put(said, id);
        return said;
      }),
    end,
    room: async () => {
      const estimate = await navigator.storage?.estimate?.();
      return { usedBytes: estimate?.usage ?? null, quotaBytes: estimate?.quota ?? null };
    },
    close: () => database.close(),
  };
}

function putPlayings(store: Writable<Schema>, found: readonly NewPlaying[]): readonly Promise<unknown>[] {
  return found.flatMap(({ playing, reports, sound }) => [
    store('playings').put(playing),
    store('reports').put(reports, playing.id),
    ...(sound === null ? [] : [store('sounds').put(sound, playing.id)]),
  ]);
}

interface Deletable {
  readonly id: string;
  readonly deletedMs: number | null;
}
const gone = (all: readonly Deletable[]): readonly string[] =>
  all.filter(({ deletedMs }) => deletedMs !== null).map(({ id }) => id);
const left = <T extends Deletable>(all: readonly T[]): readonly T[] =>
  all.filter(({ deletedMs }) => deletedMs === null);
