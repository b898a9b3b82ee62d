import type { DBSchema, IDBPDatabase } from 'idb';
import type { Report } from '../../engine/index.ts';
import type { Database, Migration } from '../database/index.ts';

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

export type JournalDatabase = Database<JournalSchema>;
/** The journal while it is open. */
export type OpenJournal = IDBPDatabase<JournalSchema>;

export const MIGRATIONS: readonly Migration<JournalSchema>[] = [
  (database) => {
    for (const store of ['drawers', 'reports', 'sounds', 'remembered'] as const)
      database.createObjectStore(store);
  },
];
