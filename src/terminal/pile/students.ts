import { promises as fs } from 'node:fs';
import { folded } from '../../io/teaching/names.ts';
import { whoseIs } from '../../io/teaching/roster.ts';
import type { Known } from '../../io/teaching/roster.ts';

/** A student of the file, and how far the pianos that they play stand from A4 = 440 Hz, as far as that is known. */
type Listed = Known & { readonly pianosCents: readonly number[] };

/** "-72 cents" */
const CENTS = /^([+-]?\d{1,3}) *cents?$/i;

/**
 * A text file → who is known: a line a student, the name first, behind a colon what else their recordings are called by, between
 * commas ("Mara Lind: mara, ML"), and the tunings of the pianos that they play ("-72 cents"). Empty lines and those that begin with # are passed over. Rejects with the system's error where it cannot be read.
 */
export async function readStudents(file: string | null): Promise<readonly Listed[]> {
  if (file === null) return [];
  return (await fs.readFile(file, 'utf8')).split(/\r?\n/).flatMap(studentIn);
}

function studentIn(line: string): readonly Listed[] {
  const text = line
    .normalize('NFC')
    .replace(/^\ufeff/, '')
    .trim();
  if (text === '' || text.startsWith('#')) return [];
  const [name, ...others] = text
    .replaceAll('−', '-')
    .split(/[:,]/)
    .map((part) => part.trim());
  if (name === undefined || name === '') return [];
  const cents = others.flatMap((one) => CENTS.exec(one)?.[1] ?? []).map(Number);
  const aliases = others.filter((one) => one !== '' && !CENTS.test(one));
  return [{ name, aliases, pianosCents: cents }];
}

/** Tells whose recordings are, path after path: two ways to write one name that is not known are one student. */
export class Roster {
  readonly #known: readonly Listed[];
  /** names that were read out of paths, as they were written first */
  readonly #proposed = new Map<string, string>();

  constructor(known: readonly Listed[]) {
    this.#known = known;
  }

  /** '' where nothing names anybody */
  studentOf(path: string): string {
    const whose = whoseIs(path, this.#known);
    if (whose.kind === 'nobody') return '';
    if (whose.kind === 'known') return whose.who.name;
    const name = folded(whose.name);
    if (!this.#proposed.has(name)) this.#proposed.set(name, whose.name);
    return this.#proposed.get(name)!;
  }

  /** The tunings of a student's pianos, cents; none: they are not known. */
  pianosCentsOf(student: string): readonly number[] {
    return this.#known.find(({ name }) => name === student)?.pianosCents ?? [];
  }

  /** Names that nobody has confirmed. */
  get proposed(): readonly string[] {
    return [...this.#proposed.values()];
  }
}
