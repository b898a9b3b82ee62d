import type { IDBPObjectStore, StoreNames } from 'idb';
import type { JournalDatabase, JournalSchema, OpenJournal } from './database.ts';
import { drawerOf, readDrawer, withEntry } from './drawers.ts';
import { packDrawer } from './packing.ts';
import type { Entry, Remembered } from './types.ts';

/** The drawers, inside a transaction that may write. */
type Drawers = IDBPObjectStore<JournalSchema, ArrayLike<StoreNames<JournalSchema>>, 'drawers', 'readwrite'>;

/** All entries, oldest first. */
export async function readEntries(database: OpenJournal): Promise<readonly Entry[]> {
  return (await database.getAll('drawers')).flatMap(readDrawer);
}

/** What else the page remembers, by its names. */
export async function readRemembered(database: OpenJournal): Promise<Remembered> {
  const [names, texts] = await Promise.all([
    database.getAllKeys('remembered'),
    database.getAll('remembered'),
  ]);
  return Object.fromEntries(names.map((name, index) => [name, JSON.parse(texts[index]!) as unknown]));
}

/** Puts an entry in its drawer; one of the same name is replaced. */
export async function putEntry(drawers: Drawers, entry: Entry): Promise<void> {
  const key = drawerOf(entry.id);
  const entries = withEntry(readDrawer(await drawers.get(key)), entry);
  await drawers.put(packDrawer(entries), key);
}

/** Changes the entries of these names → those that were there, as they are now. A drawer is written once. */
export async function putChanged(
  drawers: Drawers,
  ids: readonly string[],
  change: (entry: Entry) => Entry | null,
): Promise<readonly Entry[]> {
  const wanted = new Set(ids);
  const changed: Entry[] = [];
  for (const key of new Set(ids.map(drawerOf))) {
    const entries = readDrawer(await drawers.get(key));
    const next = entries.flatMap((entry) => {
      if (!wanted.has(entry.id)) return [entry];
      const after = change(entry);
      if (after !== null) changed.push(after);
      return after === null ? [] : [after];
    });
    await drawers.put(packDrawer(next), key);
  }
  return changed;
}

/** The same in a transaction of its own. */
export async function changeEntries(
  database: JournalDatabase,
  ids: readonly string[],
  change: (entry: Entry) => Entry,
): Promise<void> {
  await database.write(['drawers'], (store) => putChanged(store('drawers'), ids, change));
}
