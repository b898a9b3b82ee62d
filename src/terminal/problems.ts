import type { Language } from '../engine/index.ts';
import { MESSAGES } from './language/index.ts';
import type { Messages } from './language/index.ts';

/** Exit codes of the contract (README.md); 1 is left to faults of ours, as every uncaught error has it. */
export const EXIT = { analysed: 0, ourFault: 1, wrongUsage: 2, unreadable: 3, noPlaying: 4 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** What is to be told, in the words of a language: what, where, and the way out. */
export type Telling = (t: Messages, language: Language) => string;

/** Something to tell the person and an exit code to end with. Its message is English, for logs; `in` tells it in any language. */
export class Problem extends Error {
  override readonly name = 'Problem';
  readonly exitCode: ExitCode;
  readonly #tell: Telling;

  constructor(exitCode: ExitCode, tell: Telling) {
    super(tell(MESSAGES.en, 'en'));
    this.exitCode = exitCode;
    this.#tell = tell;
  }

  in(language: Language): string {
    return this.#tell(MESSAGES[language], language);
  }
}

/** A mistake in the command itself. */
export function usageProblem(tell: (t: Messages['usage'], messages: Messages) => string): Problem {
  return new Problem(EXIT.wrongUsage, (t) => tell(t.usage, t));
}

/** A file that could not be written. */
export function unwritable(file: string, cause: unknown): Problem {
  const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
  return new Problem(EXIT.wrongUsage, (t) => `${file}: ${t.problems.unwritable(code)}`);
}
