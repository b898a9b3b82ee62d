import type { Language } from '../engine/index.ts';
import { tellTrouble } from '../io/troubles/index.ts';
import type { Console } from './console.ts';
import { noteFault } from './pile/fault.ts';
import { EXIT, Problem } from './problems.ts';
import type { ExitCode } from './problems.ts';

/**
 * Does a thing with each file in turn and prints its lines. One bad file never stops the rest: its problem is said and
 * the worst exit code comes back. A line before each of several results names the file, unless they are data.
 */
export async function eachFile(
  files: readonly string[],
  console: Console,
  asData: boolean,
  language: Language,
  work: (file: string) => Promise<readonly string[]>,
): Promise<ExitCode> {
  let worst: ExitCode = EXIT.analysed;
  let printed = 0;
  for (const file of files) {
    try {
      const lines = await work(file);
      if (files.length > 1 && !asData) console.out(`${printed === 0 ? '' : '\n'}${file}\n`);
      for (const line of lines) console.out(line);
      printed++;
    } catch (cause) {
      const problem = cause instanceof Problem ? cause : ourFault(file, cause);
      console.say(`evenfall: ${problem.in(language)}`);
      if (problem.exitCode > worst) worst = problem.exitCode;
    }
  }
  return worst;
}

function ourFault(file: string, cause: unknown): Problem {
  noteFault(cause);
  return new Problem(EXIT.ourFault, (_, language) =>
    tellTrouble({ trouble: 'within', name: file, of: { trouble: 'own-fault' } }, language),
  );
}
