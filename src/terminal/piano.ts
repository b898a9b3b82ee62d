import { promises as fs } from 'node:fs';
import type { HandPlayed, PianoProfile } from '../engine/index.ts';
import { readHandsPlayed, readPiano } from '../io/check/index.ts';
import { writeOutput } from './output.ts';
import { EXIT, Problem } from './problems.ts';

/** So many of the last attempts tell where a hand plays; more only make the file longer. */
const MOST_HANDS = 40;

/** What is known of a piano and of the hands that play it, kept as JSON from one call to the next. */
export interface KeptPiano {
  readonly known: PianoProfile | null;
  /** where each hand has played when somebody said which it was, oldest first */
  readonly handsPlayed: readonly HandPlayed[];
  write(piano: PianoProfile, handsPlayed: readonly HandPlayed[]): Promise<void>;
}

/** `file` null: nothing is known and nothing kept. A file that is not there yet is begun; one that holds no piano is a Problem. */
export async function openPiano(file: string | null): Promise<KeptPiano> {
  if (file === null) return { ...NOTHING, write: () => Promise.resolve() };
  return {
    ...(await read(file)),
    write: (piano, handsPlayed) => {
      const kept = handsPlayed.slice(-MOST_HANDS);
      return writeOutput(
        file,
        `${JSON.stringify({ ...piano, ...(kept.length > 0 && { handsPlayed: kept }) })}\n`,
      );
    },
  };
}

const NOTHING: Omit<KeptPiano, 'write'> = { known: null, handsPlayed: [] };

async function read(file: string): Promise<Omit<KeptPiano, 'write'>> {
  let text: string;
  try {
    text = await fs.readFile(file, 'utf8');
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === 'ENOENT') return NOTHING;
    throw new Problem(EXIT.unreadable, (t) => `${file}: ${t.problems.pianoUnreadable}`);
  }
  const kept = parsed(text);
  const known = readPiano(kept);
  if (known === null) throw new Problem(EXIT.unreadable, (t) => `${file}: ${t.problems.noPiano}`);
  return { known, handsPlayed: readHandsPlayed(kept) };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
