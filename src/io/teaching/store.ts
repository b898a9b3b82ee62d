import type { DBSchema, StoreNames } from 'idb';
import {
  createDatabase,
  keepForGood,
  laidFile,
  layFile,
  storageUse,
  type LaidFile,
  type Migration,
  type Writable,
} from '../database/index.ts';
import { nameFor } from '../history/index.ts';
import type { SoundFile } from '../review/types.ts';
import { createWindows } from './windows.ts';
import type {
  FieldChange,
  GivenFile,
  NewPlaying,
  Playing,
  Reports,
  Said,
  Student,
  TeachingStore,
  Template,
} from './types.ts';

/** The stores; sounds, reports and remarks lie apart by the attempt's name, so that the list is read quickly. */
interface Schema extends DBSchema {
  students: { key: string; value: Student };
  files: { key: string; value: GivenFile };
  /** recordings as they came, by the file's name: those that wait to be sorted, and those that are kept whole */
  waiting: { key: string; value: LaidFile };
  playings: { key: string; value: Playing };
  reports: { key: string; value: Reports };
  sounds: { key: string; value: SoundFile };
  said: { key: string; value: Said };
  templates: { key: string; value: Template };
}
const MIGRATIONS: readonly Migration<Schema>[] = [
  (database) => {
    for (const store of ['students', 'files', 'playings'] as const)
      database.createObjectStore(store, { keyPath: 'id' });
    for (const store of ['waiting', 'reports', 'sounds', 'said'] as const) database.createObjectStore(store);
  },
  (database) => {
    database.createObjectStore('templates', { keyPath: 'id' });
  },
];
type Listed = 'students' | 'files' | 'playings' | 'templates';
/** all that is kept of an attempt */
const OF_PLAYINGS = ['playings', 'reports', 'sounds', 'said'] as const;
const ALL_STORES = ['students', 'files', 'waiting', ...OF_PLAYINGS, 'templates'] as const;

const NOTHING_SAID = { remarks: [], corrections: [] } as const;
const NO_REPORTS = { own: null, chosen: null } as const;

/** The recordings of students on this device, in IndexedDB. */
export function createTeachingStore({
  databaseName = 'evenfall-teaching',
  now = () => Date.now(),
} = {}): TeachingStore {
  const database = createDatabase(databaseName, MIGRATIONS, 'recordings');
  const windows = createWindows(databaseName);
  const end: TeachingStore['end'] = async ({ students = [], files = [], playings = [], templates = [] }) => {
    await database.write(ALL_STORES, async (store) => {
      const clear = (from: readonly StoreNames<Schema>[], ids: readonly string[]): readonly Promise<void>[] =>
        from.flatMap((name) => ids.map((id) => store(name).delete(id)));
      await Promise.all([
        ...clear(['students'], students),
        ...clear(['files', 'waiting'], files),
        ...clear(OF_PLAYINGS, playings),
        ...clear(['templates'], templates),
      ]);
    });
    windows.tell({ students, files, playings, templates });
  };
  /** All of them or, where one fails, none. */
  const addAll = async <Name extends Listed>(
    name: Name,
    values: readonly Schema[Name]['value'][],
  ): Promise<void> => {
    await database.write([name], async (store) => {
      await Promise.all(values.map((value) => store(name).put(value)));
    });
    windows.tell({ [name]: namesOf(values) });
  };
  const changeAll = async <Name extends Listed>(
    name: Name,
    changes: readonly FieldChange<Schema[Name]['value']>[],
  ): Promise<readonly Schema[Name]['value'][]> => {
    const changed = await database.write([name], async (store) => {
      const all: Schema[Name]['value'][] = [];
      for (const { id, fields } of changes) {
        const now = await store(name).get(id);
        if (now === undefined) continue;
        const next = { ...now, ...fields(now), version: (now.version ?? 0) + 1 };
        await store(name).put(next);
        all.push(next);
      }
      return all;
    });
    windows.tell({ [name]: namesOf(changed) });
    return changed;
  };

  const store: TeachingStore = {
    newId: () => nameFor(now(), crypto.randomUUID().slice(0, 8)),
    load: async () => {
      const [students, files, playings] = await database.use((open) =>
        Promise.all([open.getAll('students'), open.getAll('files'), open.getAll('playings')]),
      );
      const ended = { students: gone(students), files: gone(files), playings: gone(playings) };
      if (Object.values(ended).some((ids) => ids.length > 0) && (await windows.isAlone())) await end(ended);
      return { students: left(students), files: left(files), playings: left(playings) };
    },
    addFile: async (file, blob) => {
      await layFile(blob, (laid) =>
        database.write(['files', 'waiting'], async (store) => {
          await Promise.all([store('files').put(file), store('waiting').put(laid, file.id)]);
        }),
      );
      windows.tell({ files: [file.id] });
    },
    blob: async (fileId) => laidFile(await database.use((open) => open.get('waiting', fileId))),
    finish: async (file, found) => {
      const isMine = await database.write(ALL_STORES, async (store) => {
        const now = await store('files').get(file.id);
        if (now?.state === 'sorted') return false;
        await Promise.all([
          store('files').put({ ...file, version: (now?.version ?? 0) + 1 }),
          ...(file.whole === true ? [] : [store('waiting').delete(file.id)]),
          ...putPlayings(store, found),
        ]);
        return true;
      });
      windows.tell({ files: [file.id], playings: found.map(({ playing }) => playing.id) });
      return isMine;
    },
    letGo: async (ids) => {
      await database.write(['waiting'], async (store) => {
        await Promise.all(ids.map((id) => store('waiting').delete(id)));
      });
      await changeAll(
        'files',
        ids.map((id) => ({ id, fields: () => ({ whole: false }) })),
      );
    },
    templates: () => database.use((open) => open.getAll('templates')),
    addTemplates: (templates) => addAll('templates', templates),
    changeTemplates: (changes) => changeAll('templates', changes),
    addFiles: (files) => addAll('files', files),
    addStudents: (students) => addAll('students', students),
    changeStudents: (changes) => changeAll('students', changes),
    changeFiles: (changes) => changeAll('files', changes),
    changePlayings: (changes) => changeAll('playings', changes),
    records: ({ students, files, playings }) =>
      database.use(async (open) => {
        const some = async <Name extends Listed>(name: Name, ids: readonly string[]) => {
          const all = await Promise.all(ids.map((id) => open.get(name, id)));
          return all.flatMap((one) => one ?? []);
        };
        return {
          students: await some('students', students),
          files: await some('files', files),
          playings: await some('playings', playings),
        };
      }),
    onChanged: (call) => windows.listen(call),
    addPlayings: async (found) => {
      await database.write(OF_PLAYINGS, async (store) => {
        await Promise.all(putPlayings(store, found));
      });
      windows.tell({ playings: found.map(({ playing }) => playing.id) });
    },
    reports: async (id) => (await database.use((open) => open.get('reports', id))) ?? NO_REPORTS,
    putReports: async (id, reports) => {
      await database.put('reports', reports, id);
      windows.tell({ playings: [id] });
    },
    sound: async (id) => (await database.use((open) => open.get('sounds', id))) ?? null,
    said: async (id) => (await database.use((open) => open.get('said', id))) ?? NOTHING_SAID,
    changeSaid: async (id, change) => {
      const said = await database.write(['said'], async (store) => {
        const changed = change((await store('said').get(id)) ?? NOTHING_SAID);
        await store('said').put(changed, id);
        return changed;
      });
      windows.tell({ playings: [id] });
      return said;
    },
    end,
    room: storageUse,
    persist: keepForGood,
    backup: async (onProgress = () => undefined, passages = []) => {
      const { writeBackup } = await import('./backup-out.ts');
      return database.use(async () =>
        writeBackup({ ...store, passages, desktop: await store.load() }, now(), onProgress),
      );
    },
    bringIn: async (file, onProgress = () => undefined) => {
      const { readBackup } = await import('./backup-in.ts');
      return database.use(() => readBackup(store, file, onProgress));
    },
    close: async () => {
      windows.close();
      await database.close();
    },
  };
  return store;
}

function putPlayings(store: Writable<Schema>, found: readonly NewPlaying[]): readonly Promise<unknown>[] {
  return found.flatMap(({ playing, reports, sound }) => [
    store('playings').put(playing),
    store('reports').put(reports, playing.id),
    ...(sound === null ? [] : [store('sounds').put(sound, playing.id)]),
  ]);
}

const namesOf = (all: readonly { readonly id: string }[]): readonly string[] => all.map(({ id }) => id);

interface Deletable {
  readonly id: string;
  readonly deletedMs: number | null;
}
const gone = (all: readonly Deletable[]): readonly string[] =>
  all.filter(({ deletedMs }) => deletedMs !== null).map(({ id }) => id);
const left = <T extends Deletable>(all: readonly T[]): readonly T[] =>
  all.filter(({ deletedMs }) => deletedMs === null);
