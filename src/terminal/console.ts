import { harmless } from './drawing/index.ts';
import type { Paper } from './drawing/index.ts';

/** Where the command prints: results to `out`, all else to `say`. */
export interface Console {
  readonly paper: Paper;
  /** one line of the result */
  out(line: string): void;
  /** a whole result as it is, text or bytes */
  put(content: string | Uint8Array): void;
  /** one line for the person at the terminal, on stderr */
  say(line: string): void;
  /** a line on stderr that is written over; null where there is no terminal to write over */
  readonly overwrite: ((line: string) => void) | null;
}

const USUAL_COLUMNS = 80;
const FEWEST_COLUMNS = 40;
const MOST_COLUMNS = 120;

/** The process's own streams. Colour only on a terminal and without NO_COLOR (no-color.org). */
export function processConsole(): Console {
  const { stdout, stderr, env } = process;
  const columns = Math.min(Math.max(stdout.columns ?? USUAL_COLUMNS, FEWEST_COLUMNS), MOST_COLUMNS);
  return {
    paper: {
      columns,
      colour: stdout.isTTY === true && !env['NO_COLOR'] && env['TERM'] !== 'dumb',
      unicode: isUnicode(env),
    },
    out: (line) => void stdout.write(`${harmless(line)}\n`),
    put: (content) => void stdout.write(content),
    say: (line) => void stderr.write(`${harmless(line)}\n`),
    overwrite: stderr.isTTY === true ? (line) => void stderr.write(`\r\x1b[K${harmless(line)}`) : null,
  };
}

/** POSIX: the first of these that is set and not empty tells the character set; none set: trust that it is a new terminal. */
function isUnicode(env: NodeJS.ProcessEnv): boolean {
  const locale = env['LC_ALL'] || env['LC_CTYPE'] || env['LANG'];
  return !locale || /utf-?8/i.test(locale);
}
