import { promises as fs } from 'node:fs';
import type { PianoProfile } from '../engine/index.ts';
import { readPiano } from '../io/check/index.ts';
import { writeOutput } from './output.ts';
import { EXIT, Problem } from './problems.ts';

/** What is known of a piano, kept as JSON from one call to the next. */
export interface KeptPiano {
  readonly known: PianoProfile | null;
  write(piano: PianoProfile): Promise<void>;
}

/** `file` null: nothing is known and nothing kept. A file that is not there yet is begun; one that holds no piano is a Problem. */
export async function openPiano(file: string | null): Promise<KeptPiano> {
  if (file === null) return { known: null, write: () => Promise.resolve() };
  return {
    known: await read(file),
    write: (piano) => writeOutput(file, `${JSON.stringify(piano)}\n`),
  };
}

async function read(file: string): Promise<PianoProfile | null> {
  let text: string;
  try {
    text = await fs.readFile(file, 'utf8');
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw new Problem(EXIT.unreadable, (t) => `${file}: ${t.problems.pianoUnreadable}`);
  }
  const piano = readPiano(parsed(text));
  if (piano === null) throw new Problem(EXIT.unreadable, (t) => `${file}: ${t.problems.noPiano}`);
  return piano;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
