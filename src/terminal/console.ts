import { endOf, harmless, toPlain, wrapText } from './drawing/index.ts';
import type { Paper } from './drawing/index.ts';

/** Where the command prints: results to `out`, all else to `say`. */
export interface Console {
  readonly paper: Paper;
  /** one line of the result */
  out(line: string): void;
  /** a whole result as it is, text or bytes */
  put(content: string | Uint8Array): void;
  /** words for the person at the terminal, on stderr: broken into lines there, one line elsewhere */
  say(line: string): void;
  /** a line on stderr that is written over, and of a name as much of its end as fits; null where there is no terminal to write over */
  readonly overwrite: ((line: string, name: string) => void) | null;
}

const USUAL_COLUMNS = 80;
const FEWEST_COLUMNS = 40;
const MOST_COLUMNS = 120;

/** The process's own streams. Colour only on a terminal and without NO_COLOR (no-color.org). */
export function processConsole(): Console {
  const { stdout, stderr, env } = process;
  const columnsOf = (stream: NodeJS.WriteStream): number =>
    Math.min(Math.max(stream.columns ?? USUAL_COLUMNS, FEWEST_COLUMNS), MOST_COLUMNS);
  const unicode = isUnicode(env);
  const shown = (line: string): string => harmless(unicode ? line : toPlain(line));
  return {
    paper: {
      columns: columnsOf(stdout),
      colour: stdout.isTTY === true && !env['NO_COLOR'] && env['TERM'] !== 'dumb',
      unicode,
    },
    out: (line) => void stdout.write(`${harmless(line)}\n`),
    put: (content) => void stdout.write(content),
    say: (line) => {
      const lines = stderr.isTTY === true ? wrapText(shown(line), columnsOf(stderr)) : [shown(line)];
      stderr.write(`${lines.join('\n')}\n`);
    },
    // A line that is too long goes on in the next one, and only that would be written over.
    overwrite:
      stderr.isTTY === true
        ? (line, name) => {
            const begun = shown(line);
            const room = columnsOf(stderr) - 1 - [...begun].length;
            stderr.write(`\r\x1b[K${begun}${shown(endOf(name, room))}`);
          }
        : null,
  };
}

/** POSIX: the first of these that is set and not empty tells the character set; none set: trust that it is a new terminal. */
function isUnicode(env: NodeJS.ProcessEnv): boolean {
  const locale = env['LC_ALL'] || env['LC_CTYPE'] || env['LANG'];
  return !locale || /utf-?8/i.test(locale);
}
