import { openArchive } from './lines.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { MESSAGES } from './language/index.ts';
import type { Collected } from './pile/collect.ts';
import { openCrew } from './pile/crew.ts';
import type { CrewOptions } from './pile/crew.ts';
import { recordingLine, refusedLine } from './pile/recording-line.ts';
import type { RecordingLine } from './pile/recording-line.ts';
import type { Recording } from './pile/types.ts';
import { EXIT } from './problems.ts';
import type { ExitCode } from './problems.ts';
import { createProgress } from './progress.ts';

type DeskCommand = Extract<Command, { kind: 'desk' }>;

/**
 * An archive of any size → one line a recording, as soon as it is sorted; no recording waits for another, and nothing is held but
 * their names. A file of lines is gone on with: what has its line already is passed over.
 */
export async function deskLines(
  { archive: { linesFile, shard }, language, quiet }: DeskCommand,
  { recordings, refused }: Collected,
  crew: CrewOptions,
  console: Console,
): Promise<ExitCode> {
  const lines = await openArchive(linesFile ?? '-', shard, console);
  const byName = new Map(recordings.map((one) => [one.name, one]));
  const left = [...byName.values()].filter(({ name }) => !lines.has(name));
  const progress = createProgress(console, '', quiet);
  let worst: ExitCode = EXIT.analysed;
  let done = 0;
  const tell = async (line: RecordingLine): Promise<void> => {
    await lines.add(line);
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
    for (const { name, reason } of refused.filter((one) => !lines.has(one.name)))
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

function codeOf({ durationSec, attempts }: RecordingLine): ExitCode {
  if (durationSec === null) return EXIT.unreadable;
  return attempts.length === 0 ? EXIT.noPlaying : EXIT.analysed;
}
