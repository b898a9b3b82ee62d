import { promises as fs } from 'node:fs';
import { folded } from '../../io/teaching/names.ts';
import { whoseIs } from '../../io/teaching/roster.ts';
import type { Known } from '../../io/teaching/roster.ts';

/**
 * A text file → who is known: a line a student, the name first, behind a colon what else their recordings are called by, between
 * commas ("Mara Lind: mara, ML"). Empty lines and those that begin with # are passed over. Rejects with the system's error where it cannot be read.
 */
export async function readStudents(file: string | null): Promise<readonly Known[]> {
  if (file === null) return [];
  return (await fs.readFile(file, 'utf8')).split(/\r?\n/).flatMap(studentIn);
}

function studentIn(line: string): readonly Known[] {
  const text = line
    .normalize('NFC')
    .replace(/^\ufeff/, '')
    .trim();
  if (text === '' || text.startsWith('#')) return [];
  const [name, ...others] = text.split(/[:,]/).map((part) => part.trim());
  return name === undefined || name === '' ? [] : [{ name, aliases: others.filter((one) => one !== '') }];
}

/** Tells whose recordings are, path after path: two ways to write one name that is not known are one student. */
export class Roster {
  readonly #known: readonly Known[];
  /** names that were read out of paths, as they were written first */
  readonly #proposed = new Map<string, string>();

  constructor(known: readonly Known[]) {
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

  /** Names that nobody has confirmed. */
  get proposed(): readonly string[] {
    return [...this.#proposed.values()];
  }
}
