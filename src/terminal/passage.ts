import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import type { ExerciseChoice } from '../engine/index.ts';
import type { Bars } from '../io/scores/index.ts';
import { troubleOf } from '../io/troubles/index.ts';
import { PASSAGE_OPTIONS } from './choice.ts';
import { headOf } from './files.ts';
import { usageProblem } from './problems.ts';
import { systemTrouble, troubleProblem } from './sound.ts';
import { readNumber } from './values.ts';

/** So many passages one file may hold. */
const MOST_PASSAGES = 200;

/** No music is longer; of more, so much is read that it is refused. */
const MOST_BYTES = 32 * 2 ** 20;

/**
 * The words of a command line → the passage in the file that `--exercise` names; null: none is named. Throws Problem: the file cannot be
 * read, or there is no such passage in it.
 */
export async function passageIn(words: readonly string[]): Promise<ExerciseChoice | null> {
  if (!['analyse', 'analyze', 'exercises'].includes(words[0] ?? '')) return null;
  const { values } = parseArgs({
    args: words.slice(1),
    options: PASSAGE_OPTIONS,
    allowPositionals: true,
    strict: false,
  });
  const { exercise: file, bars, passage = '1' } = values;
  if (typeof file !== 'string') return null;
  const all = await readPassages(file, typeof bars === 'string' ? readBars(bars) : null);
  const number = readNumber('passage', String(passage), 1, MOST_PASSAGES);
  const found = all[number - 1];
  if (found === undefined) throw usageProblem((t) => t.noPassage(number, file, all.length));
  return found;
}

/** The passages in a file, among which a recording is to be recognised; null: there is none. Throws Problem where it cannot be read. */
export async function readAmong(file: string | null): Promise<readonly ExerciseChoice[]> {
  return file === null ? [] : readPassages(file, null);
}

async function readPassages(file: string, bars: Bars | null): Promise<readonly ExerciseChoice[]> {
  try {
    const { openPassages } = await import('../io/scores/index.ts');
    return await openPassages(new File([await headOf(file, MOST_BYTES)], basename(file)), bars);
  } catch (cause) {
    const of = cause instanceof Error && 'code' in cause ? systemTrouble(cause) : troubleOf(cause);
    throw troubleProblem({ trouble: 'within', name: file, of });
  }
}

/** "5-8", or "5" */
function readBars(text: string): Bars {
  const [, from, to = from] = /^(\d{1,4})(?:[-–](\d{1,4}))?$/.exec(text) ?? [];
  if (from === undefined) throw usageProblem((t) => t.noBars(text));
  return { from: Number(from), to: Number(to) };
}
