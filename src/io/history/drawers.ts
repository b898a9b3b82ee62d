import { unpackDrawer } from './packing.ts';
import type { Entry } from './types.ts';

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
