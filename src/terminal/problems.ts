/** Exit codes of the contract (README.md); 1 is left to faults of ours, as every uncaught error has it. */
export const EXIT = { analysed: 0, ourFault: 1, wrongUsage: 2, unreadable: 3, noPlaying: 4 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Something to tell the person and an exit code to end with. The message says what, where, and the way out. */
export class Problem extends Error {
  override readonly name = 'Problem';
  readonly exitCode: ExitCode;

  constructor(exitCode: ExitCode, message: string) {
    super(message);
    this.exitCode = exitCode;
  }
}

/** A mistake in the command itself. */
export function usageProblem(message: string): Problem {
  return new Problem(EXIT.wrongUsage, message);
}
