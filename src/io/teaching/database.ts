import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { SoundFile } from '../review/types.ts';
import { TeachingError } from './errors.ts';
import type { GivenFile, Playing, Reports, Said, Student } from './types.ts';

/** The stores, version 1; sounds, reports and remarks lie apart by the attempt's name, so that the list is read quickly. */
export interface TeachingSchema extends DBSchema {
  students: { key: string; value: Student };
  files: { key: string; value: GivenFile };
  /** recordings that wait to be sorted, by the file's name */
  waiting: { key: string; value: Blob };
  playings: { key: string; value: Playing };
  reports: { key: string; value: Reports };
  sounds: { key: string; value: SoundFile };
  said: { key: string; value: Said };
}

export type TeachingDatabase = IDBPDatabase<TeachingSchema>;
export const ALL_STORES = ['students', 'files', 'waiting', 'playings', 'reports', 'sounds', 'said'] as const;

/** Opens the recordings of students. `onGone`: another page needs it closed. */
export function openTeaching(name: string, onGone: () => void): Promise<TeachingDatabase> {
  let refuse: (error: TeachingError) => void = () => undefined;
  const refused = new Promise<never>((_, reject) => (refuse = reject));
  const opening = openDB<TeachingSchema>(name, 1, {
    upgrade: (database) => {
      for (const store of ['students', 'files', 'playings'] as const) {
        database.createObjectStore(store, { keyPath: 'id' });
      }
      for (const store of ['waiting', 'reports', 'sounds', 'said'] as const)
        database.createObjectStore(store);
    },
    blocked: () =>
      refuse(
        new TeachingError(
          'Another window has an older version of this page open. Close it, then open this page again.',
        ),
      ),
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      onGone();
    },
    terminated: onGone,
  });
  return Promise.race([opening, refused]);
}
