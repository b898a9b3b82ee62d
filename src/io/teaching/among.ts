import { folded } from './names.ts';

/** A name that was read out of paths, how many recordings are called by it, and whether a folder is. */
export interface Counted {
  readonly name: string;
  readonly count: number;
  readonly isFolder: boolean;
}

/** So often a name stands alone before a word more behind it, which nothing else has, is taken for none of it. */
const ALONE = 3;

/**
 * A name among all that came in and all who are known → what it most likely is, to be shown where the teacher confirms it. "Lotte
 * Urlaub" is Lotte where several are called Lotte alone and nobody else Urlaub; "Lotte Friedrichs" stays where a folder or a second
 * recording bears that name, in any order. Nothing is put together by this: it stays one row to be confirmed.
 */
export function likelyName(name: string, among: readonly Counted[]): string {
  const words = folded(name).split(' ');
  const own = among.find((one) => folded(one.name) === folded(name));
  if (own !== undefined && (own.isFolder || own.count > 1)) return name;
  const others = among.filter((one) => one !== own);
  for (let length = words.length - 1; length > 0; length--) {
    const short = words.slice(0, length).join(' ');
    const alone = others.find((one) => folded(one.name) === short);
    const isBorne = words
      .slice(length)
      .some((word) => word.length === 1 || others.some((one) => folded(one.name).split(' ').includes(word)));
    if (alone !== undefined && alone.count >= ALONE && !isBorne) return alone.name;
  }
  return name;
}
