import { noteName } from '../../engine/index.ts';
import { speaking } from '../language/index.ts';

const LETTERS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const;
const SIGNS = ['', '#', '##', 'b', 'bb'] as const;
const ALL_NAMES: readonly string[] = LETTERS.flatMap((letter) => SIGNS.map((sign) => letter + sign));

/** As typed: no capitals, signs from the keyboard; "so" and "sol" are one, "Ases" and "Asas" too. */
function plain(text: string): string {
  return text
    .toLowerCase()
    .replaceAll('♯', '#')
    .replaceAll('♭', 'b')
    .replace(/×|𝄪|x/, '##')
    .replace(/^so(?!l)/, 'sol')
    .replace(/^ases$/, 'asas');
}

/** A name as somebody types it, in the naming of the page → its plain name, "Fis" → "F#"; null: no note is called so. */
export function readName(text: string): string | null {
  const wanted = plain(text.trim());
  return ALL_NAMES.find((name) => plain(noteName(name, speaking.naming)) === wanted) ?? null;
}

/** Names with blanks or commas between → the plain names, and those that are none. */
export function readNames(text: string): {
  readonly names: readonly string[];
  readonly unknown: readonly string[];
} {
  const words = text.split(/[\s,;–-]+/).filter((word) => word !== '');
  return {
    names: words.map(readName).filter((name) => name !== null),
    unknown: words.filter((word) => readName(word) === null),
  };
}
