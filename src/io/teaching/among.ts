import { folded } from './names.ts';

/** A name as it is written, and how many recordings are called by it. */
export interface Counted {
  readonly name: string;
  readonly count: number;
}

/** So often a name stands alone before a word more behind it, which nothing else has, is taken for none of it. */
const ALONE = 3;

/** Names and how many recordings each has → the same, by what is alike in all ways to write them (`folded`). */
export function namesAmong(all: readonly Counted[]): ReadonlyMap<string, Counted> {
  const among = new Map<string, Counted>();
  for (const { name, count } of all) {
    const key = folded(name);
    const before = among.get(key);
    among.set(key, before === undefined ? { name, count } : { ...before, count: before.count + count });
  }
  return among;
}

/**
 * A name among all that came in and all who are known → what it most likely is, to be shown where the teacher confirms it. "Lotte
 * Urlaub" is Lotte where several are called Lotte alone and nobody else Urlaub; "Lotte Friedrichs" stays where a folder
 * (`isFolder`) or a second recording bears that name, in any order. Nothing is put together by this: it stays one row to be confirmed.
 */
export function likelyName(name: string, isFolder: boolean, among: ReadonlyMap<string, Counted>): string {
  const own = folded(name);
  const words = own.split(' ');
  if (words.length < 2 || isFolder || (among.get(own)?.count ?? 0) > 1) return name;
  const isBorne = (word: string): boolean =>
    word.length === 1 || [...among.keys()].some((other) => other !== own && other.split(' ').includes(word));
  for (let length = words.length - 1; length > 0; length--) {
    const alone = among.get(words.slice(0, length).join(' '));
    if (alone !== undefined && alone.count >= ALONE && !words.slice(length).some(isBorne)) return alone.name;
  }
  return name;
}
