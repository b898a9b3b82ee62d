import { atCapitals, folded, isOfTwo, nameIn, stemOf } from './names.ts';

/** Somebody who is known already: their name, and what else their recordings are called by. */
export interface Known {
  readonly name: string;
  readonly aliases: readonly string[];
}

/** Whose a recording is, as far as its path tells. */
export type Whose<Who extends Known> =
  | { readonly kind: 'known'; readonly who: Who }
  /** somebody new, or somebody known under another name (`likely`): to be confirmed by the teacher */
  | { readonly kind: 'proposed'; readonly name: string; readonly likely: readonly Who[] }
  | { readonly kind: 'nobody' };

/**
 * Path of a recording → whose it is. Certain is only a name or an alias that is known and is one person's: a folder or the whole
 * name of the file, else the name found in it, and nobody else's name beside it.
 */
export function whoseIs<Who extends Known>(path: string, roster: readonly Who[]): Whose<Who> {
  const { name } = nameIn(path);
  const written = path.split(/[/\\]/).map((part, at, all) => (at === all.length - 1 ? stemOf(part) : part));
  const parts = written.map(folded);
  const spaced = written.map((part) => folded(atCapitals(part)));
  const called = roster.filter((one) => parts.some((part) => namesOf(one).includes(part)));
  if (called.length === 1) return { kind: 'known', who: called[0]! };
  const named = roster.filter((one) => namesOf(one).some((alias) => isIn(alias, [...parts, ...spaced])));
  const told: Whose<Who> = name === '' ? { kind: 'nobody' } : whoIs(name, roster);
  if (told.kind === 'known') {
    const mine = namesOf(told.who);
    const beside = named.filter(
      (one) => one !== told.who && !namesOf(one).some((alias) => mine.some((own) => isIn(alias, [own]))),
    );
    return beside.length === 0 ? told : { kind: 'proposed', name, likely: [told.who, ...beside] };
  }
  // What is no name by itself ("07 MK.m4a") is somebody's where they are known to be called so.
  if (told.kind === 'nobody' && named.length === 1 && !isOfTwo(path))
    return { kind: 'known', who: named[0]! };
  return told;
}

/** The same for a name, as a student wrote it. */
export function whoIs<Who extends Known>(name: string, roster: readonly Who[]): Whose<Who> {
  const wanted = folded(name);
  const exact = roster.filter((one) => namesOf(one).includes(wanted));
  if (exact.length === 1) return { kind: 'known', who: exact[0]! };
  const likely = exact.length > 1 ? exact : roster.filter((one) => isLike(wanted, one));
  return { kind: 'proposed', name, likely };
}

/** Words in a row of one of the parts. */
function isIn(words: string, parts: readonly string[]): boolean {
  return parts.some((part) => ` ${part} `.includes(` ${words} `));
}

function namesOf({ name, aliases }: Known): readonly string[] {
  return [name, ...aliases].map(folded).filter((one) => one !== '');
}

/** One has all words of the other, the last perhaps as its first letter: Mara, Mara L., Mara Lind; also in another order. */
function isLike(wanted: string, one: Known): boolean {
  return namesOf(one).some((known) => {
    const [few, many] = [wanted.split(' '), known.split(' ')].sort((a, b) => a.length - b.length);
    const isThere = (word: string): boolean =>
      many!.some((other) => other === word || (word.length === 1 && other.startsWith(word)));
    return few!.every(isThere) && few!.some((word) => word.length > 1);
  });
}
