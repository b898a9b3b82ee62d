import { createHash } from 'node:crypto';
import type { Command, Shard } from './commands.ts';
import type { Console } from './console.ts';
import { MESSAGES } from './language/index.ts';
import type { Collected } from './pile/collect.ts';
import { openCrew } from './pile/crew.ts';
import type { CrewOptions } from './pile/crew.ts';
import { openLines } from './pile/line-file.ts';
import type { LineFile } from './pile/line-file.ts';
import { recordingLine, refusedLine } from './pile/recording-line.ts';
import type { RecordingLine } from './pile/recording-line.ts';
import type { Recording } from './pile/types.ts';
import { EXIT, unwritable } from './problems.ts';
import type { ExitCode } from './problems.ts';
import { createProgress } from './progress.ts';

type DeskCommand = Extract<Command, { kind: 'desk' }>;

/**
 * An archive of any size → one line a recording, as soon as it is sorted; no recording waits for another, and nothing is held but
 * their names. A file of lines is gone on with: what has its line already is passed over.
 */
export async function deskLines(
  command: DeskCommand,
  { recordings, refused }: Collected,
  crew: CrewOptions,
  console: Console,
): Promise<ExitCode> {
  const { linesFile, shard, language, quiet } = command;
  const lines =
    linesFile === null || linesFile === '-'
      ? toConsole(console)
      : await orUnwritable(linesFile, () => openLines(linesFile));
  const isMine = (name: string): boolean => isIn(name, shard) && !lines.done.has(name);
  const left = recordings.filter(({ name }) => isMine(name));
  const progress = createProgress(console, '', quiet);
  let worst: ExitCode = EXIT.analysed;
  let done = 0;
  const tell = async (line: RecordingLine): Promise<void> => {
    await orUnwritable(linesFile ?? '-', () => lines.add(JSON.stringify(line)));
    worst = Math.max(worst, codeOf(line)) as ExitCode;
  };
  const { sort, close } = openCrew(crew, left.length);
  /** Takes one recording after the other until none is left. */
  const lane = async (queue: Iterator<Recording>): Promise<void> => {
    for (let next = queue.next(); next.done !== true; next = queue.next()) {
      await tell(recordingLine(await sort(next.value, null, () => undefined), language));
      done += 1;
      progress.show(done / left.length, MESSAGES[language].desk.progress(done, left.length));
    }
  };
  try {
    for (const { name, reason } of refused.filter((one) => isMine(one.name)))
      await tell(refusedLine(name, reason, language));
    const queue = left[Symbol.iterator]();
    await Promise.all(Array.from({ length: crew.workers }, () => lane(queue)));
  } finally {
    close();
    progress.clear();
    await lines.close();
  }
  return worst;
}

/** What the system refuses is told with the file's name. */
async function orUnwritable<T>(file: string, act: () => Promise<T>): Promise<T> {
  try {
    return await act();
  } catch (cause) {
    throw unwritable(file, cause);
  }
}

/** By its name alone, so that a recording is in the same part whatever else there is. */
function isIn(name: string, shard: Shard | null): boolean {
  if (shard === null) return true;
  const hash = createHash('sha256').update(name.normalize('NFC')).digest().readUInt32BE(0);
  return hash % shard.of === shard.part - 1;
}

function codeOf({ durationSec, attempts }: RecordingLine): ExitCode {
  if (durationSec === null) return EXIT.unreadable;
  return attempts.length === 0 ? EXIT.noPlaying : EXIT.analysed;
}

function toConsole(console: Console): LineFile {
  return {
    done: new Set(),
    add: async (line) => console.out(line),
    close: async () => undefined,
  };
}
