import { languageIn, parseCommand } from './arguments.ts';
import { processConsole } from './console.ts';
import { fitHelp } from './help.ts';
import { HELPS, MESSAGES } from './language/index.ts';
import { passageIn } from './passage.ts';
import { HELPER } from './pile/types.ts';
import { EXIT, Problem, unwritable } from './problems.ts';
import type { Wiring } from './wiring.ts';

/** The command line. Results go to stdout, everything else to stderr; exit codes are those of the contract. */
async function main(words: readonly string[], wiring: Wiring): Promise<number> {
  const { version, writePage } = wiring;
  const console = processConsole();
  try {
    if (words[0] === HELPER && process.send !== undefined) {
      (await import('./pile/helper.ts')).help();
      return EXIT.analysed;
    }
    const command = parseCommand(words, await passageIn(words));
    switch (command.kind) {
      case 'help':
        console.out(fitHelp(HELPS[command.language][command.about ?? 'all'], console.paper));
        return EXIT.analysed;
      case 'version':
        console.out(`evenfall ${version}`);
        return EXIT.analysed;
      case 'analyse':
        return await (await import('./analyse.ts')).analyse(command, console);
      case 'desk':
        return await (await import('./desk.ts')).desk(command, console, wiring);
      case 'transcribe':
        return await (await import('./transcribe.ts')).transcribe(command, console);
      case 'review':
        return await (await import('./review.ts')).review(command, console, writePage);
      case 'exercises':
        return (await import('./exercises.ts')).exercises(command, console);
    }
  } catch (cause) {
    if (!(cause instanceof Problem)) throw cause;
    console.say(`evenfall: ${cause.in(languageIn(words))}`);
    return cause.exitCode;
  }
}

/** Runs the command with the words of its process, and sets how the process ends. */
export async function run(wiring: Wiring): Promise<void> {
  // The decoders of others print what they stumble over; here it is said in our own words.
  Object.assign(console, { error: () => undefined, warn: () => undefined });

  // Whoever reads our output may stop reading: that is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(process.exitCode ?? EXIT.analysed);
    const language = languageIn(process.argv);
    process.stderr.write(`evenfall: ${unwritable(MESSAGES[language].standardOutput, error).in(language)}\n`);
    process.exit(EXIT.wrongUsage);
  });
  // What cannot be said to anybody is no reason to stop.
  process.stderr.on('error', () => undefined);

  // Leaves no half-drawn bar behind; 128 + the signal's number, as shells have it.
  process.on('SIGINT', () => {
    if (process.stderr.isTTY) process.stderr.write('\r\x1b[K');
    process.exit(130);
  });

  process.exitCode = await main(process.argv.slice(2), wiring);
}
