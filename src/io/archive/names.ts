import { plainName } from '../check/index.ts';
import { readerOf } from './code-pages.ts';
import { crc32 } from './crc.ts';
import { extraField } from './directory.ts';
import type { Listed } from './directory.ts';
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
  // UTF-8, whether it says so or not; what is none is read letter by byte, for old archives.
  const spelt = utf8(bytes);
  if (spelt === null && (flags & IS_UTF8) !== 0) throw new ArchiveError({ trouble: 'zip-nameless' });
  const name = spelt ?? new TextDecoder('latin1').decode(bytes);
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

/** A name in UTF-8 beside one that is not, with the checksum of that one (APPNOTE.TXT 6.3.10, 4.6.9). */
const UNICODE_PATH = 0x7075;

/**
 * The lines of a directory → a name for each, one to show and to tell a student by, never one to write a file to: whatever
 * code page, slashes and unseen signs its writer had. Two alike are told apart by a number.
 */
export function foreignNames(listed: readonly Listed[]): readonly string[] {
  const spelt = listed.map((one) => unicodePath(one) ?? utf8(one.nameBytes));
  const unspelt = listed.filter((_, at) => spelt[at] === null).map(({ nameBytes }) => nameBytes);
  const read = readerOf(unspelt);
  const taken = new Set<string>();
  return listed.map(({ nameBytes }, at) => apart(harmless(spelt[at] ?? read(nameBytes), at), taken));
}

function unicodePath({ extra, nameBytes }: Listed): string | null {
  const field = extraField(extra, UNICODE_PATH);
  if (field === null || field.length < 5 || field[0] !== 1) return null;
  const crc = new DataView(field.buffer, field.byteOffset).getUint32(1, true);
  return crc === crc32(nameBytes) ? utf8(field.subarray(5)) : null;
}

function utf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** Folders parted by /, without those that climb, a drive, or signs that are not seen. */
function harmless(name: string, at: number): string {
  const parts = name
    .replaceAll('\\', '/')
    .replace(/^[A-Za-z]:/, '')
    .split('/')
    .map(plainName);
  const isFolder = parts.at(-1) === '' && parts.length > 1;
  const path = parts.filter((part) => !['', '.', '..'].includes(part)).join('/');
  const letters = [...path];
  const kept = letters.length > MOST_LETTERS ? letters.slice(-MOST_LETTERS).join('') : path;
  return `${kept === '' ? `${at + 1}` : kept}${isFolder ? '/' : ''}`;
}

/** "one.wav" a second time → "one (2).wav". */
function apart(name: string, taken: Set<string>): string {
  const [, stem, ending] = /^(.*?)((?:\.[^./]*)?\/?)$/su.exec(name)!;
  let told = name;
  for (let number = 2; taken.has(sameName(told)); number++) told = `${stem} (${number})${ending}`;
  taken.add(sameName(told));
  return told;
}
