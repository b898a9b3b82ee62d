import type { IDBPObjectStore, StoreNames } from 'idb';
import type { JournalDatabase, JournalSchema, OpenJournal } from './database.ts';
import { packDrawer, unpackDrawer } from './packing.ts';
import type { Entry, Remembered } from './types.ts';

/** How much time one drawer of entries holds, ms. */
const DRAWER_MS = 30 * 86_400_000;

/** Letters of a time in base 36: enough until the year 5188, with leading zeros so that order of text is order of time. */
const TIME_LETTERS = 9;

/** Names of attempts: the time, then what tells apart attempts of one moment. */
export const ID_PATTERN = /^[0-9a-z]{9}-[0-9a-z]{4,40}$/;

/** A moment and some letters → a name that sorts by its time. */
export function nameFor(whenMs: number, letters: string): string {
  return `${Math.max(0, Math.round(whenMs)).toString(36).padStart(TIME_LETTERS, '0')}-${letters}`;
}

/** The time in a name, ms since 1970. */
export function timeIn(id: string): number {
  return Number.parseInt(id.slice(0, TIME_LETTERS), 36);
}

/** The number of the drawer in which the entry of that name lies. */
export function drawerOf(id: string): number {
  return Math.floor(timeIn(id) / DRAWER_MS);
}

/** The text of a drawer, or none → its entries. */
export function readDrawer(text: string | undefined): readonly Entry[] {
  return text === undefined ? [] : unpackDrawer(text);
}

/** Entries with one put in its place, in order of names; the entry of that name is replaced. */
export function withEntry(entries: readonly Entry[], entry: Entry): readonly Entry[] {
  const at = entries.findIndex((one) => one.id >= entry.id);
  if (at === -1) return [...entries, entry];
  const replaced = entries[at]!.id === entry.id ? 1 : 0;
  return entries.toSpliced(at, replaced, entry);
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
