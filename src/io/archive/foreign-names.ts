import { plainName } from '../check/index.ts';
import { readerOf } from './code-pages.ts';
import { crc32 } from './crc.ts';
import { extraField } from './directory.ts';
import type { Listed } from './directory.ts';
import { sameName } from './names.ts';

/** A name in UTF-8 beside one that is not, with the checksum of that one (APPNOTE.TXT 6.3.10, 4.6.9). */
const UNICODE_PATH = 0x7075;
const MOST_LETTERS = 400;

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
