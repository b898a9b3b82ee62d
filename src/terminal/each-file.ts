import type { Language } from '../engine/index.ts';
import { plainName } from '../io/check/index.ts';
import { tellTrouble } from '../io/troubles/index.ts';
import type { Console } from './console.ts';
import { noteFault } from './pile/fault.ts';
import { EXIT, Problem } from './problems.ts';
import type { ExitCode } from './problems.ts';

/**
 * Does a thing with each file in turn and prints its lines in the order of the files. One bad file never stops the rest: its
 * problem is said and the worst exit code comes back. A line before each of several results names the file, unless they are
 * data. Where the work answers 'later', it is asked for that file again after the others (`others`: they are done).
 */
export async function eachFile(
  files: readonly string[],
  console: Console,
  asData: boolean,
  language: Language,
  work: (file: string, others: 'to come' | 'done') => Promise<readonly string[] | 'later'>,
): Promise<ExitCode> {
  let worst: ExitCode = EXIT.analysed;
  let printed = 0;
  const tryOne = async (file: string, others: 'to come' | 'done'): Promise<readonly string[] | 'later'> => {
    try {
      return await work(file, others);
    } catch (cause) {
      const problem = cause instanceof Problem ? cause : ourFault(file, cause);
      console.say(`evenfall: ${problem.in(language)}`);
      if (problem.exitCode > worst) worst = problem.exitCode;
      return [];
    }
  };
  const print = (file: string, lines: readonly string[]): void => {
    if (lines.length === 0) return;
    if (files.length > 1 && !asData) console.out(`${printed === 0 ? '' : '\n'}${plainName(file)}\n`);
    for (const line of lines) console.out(line);
    printed++;
  };
  /** results from the first file on that has to wait */
  const waiting: { readonly file: string; readonly result: readonly string[] | 'later' }[] = [];
  for (const file of files) {
    const result = await tryOne(file, 'to come');
    if (result === 'later' || waiting.length > 0) waiting.push({ file, result });
    else print(file, result);
  }
  for (const { file, result } of waiting) {
    const lines = result === 'later' ? await tryOne(file, 'done') : result;
    if (lines !== 'later') print(file, lines);
  }
  return worst;
}

/** What failed within: a fault of ours, told as one. */
export function ourFault(file: string, cause: unknown): Problem {
  noteFault(cause);
  return new Problem(EXIT.ourFault, (_, language) =>
    tellTrouble({ trouble: 'within', name: plainName(file), of: { trouble: 'own-fault' } }, language),
  );
}
