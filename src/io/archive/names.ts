import { ArchiveError } from './errors.ts';

/** Longest path that is taken, letters. */
const MOST_LETTERS = 400;

/** Bit 11 of the flags: the name is UTF-8 (APPNOTE.TXT 6.3.10, 4.4.4). */
const IS_UTF8 = 1 << 11;

/**
 * The bytes of a member's name → the name; throws ArchiveError where it could lead out of the folder that it is unpacked
 * into or show as something that it is not. Paths that climb, are absolute or carry a drive are common knowledge as tricks.
 */
export function memberName(bytes: Uint8Array, flags: number): string {
  const name = decoded(bytes, (flags & IS_UTF8) !== 0);
  if (name === '' || name.length > MOST_LETTERS) throw new ArchiveError({ trouble: 'zip-nameless' });
  const climbs = name.split('/').some((part, at, parts) => {
    const endsFolder = part === '' && at > 0 && at === parts.length - 1;
    return part === '..' || part === '.' || (part === '' && !endsFolder);
  });
  // Signs that are not seen (controls, marks of direction) make one name look like another.
  const tricks = /[\\\p{Cc}\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]|^[A-Za-z]:/u.test(name);
  if (climbs || tricks) throw new ArchiveError({ trouble: 'zip-leads-elsewhere' });
  return name;
}

/** What two names have in common that a disk may take for one: letters large or small, accents joined or apart. */
export function sameName(name: string): string {
  return name.normalize('NFKC').toLowerCase();
}

/** UTF-8, whether it says so or not; what is none is read letter by byte, for old archives. */
function decoded(bytes: Uint8Array, saysUtf8: boolean): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    if (saysUtf8) throw new ArchiveError({ trouble: 'zip-nameless' });
    return new TextDecoder('latin1').decode(bytes);
  }
}
