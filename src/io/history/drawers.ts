import type { IDBPObjectStore, StoreNames } from 'idb';
import type { JournalDatabase, JournalSchema, OpenJournal } from './database.ts';
import { timeIn, withEntry } from './entry.ts';
import { packDrawer, unpackDrawer } from './packing.ts';
import type { Entry, Remembered } from './types.ts';

/** How much time one drawer of entries holds, ms. */
const DRAWER_MS = 30 * 86_400_000;

/** The number of the drawer in which the entry of that name lies. */
export function drawerOf(id: string): number {
  return Math.floor(timeIn(id) / DRAWER_MS);
}

/** The text of a drawer, or none → its entries. */
export function readDrawer(text: string | undefined): readonly Entry[] {
  return text === undefined ? [] : unpackDrawer(text);
}

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

/** The entry of that name. */
export async function findEntry(drawers: Drawers, id: string): Promise<Entry | undefined> {
  return readDrawer(await drawers.get(drawerOf(id))).find((entry) => entry.id === id);
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
