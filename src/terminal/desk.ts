import { statSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import type { Language } from '../engine/index.ts';
import { withListed } from './archive.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { MESSAGES, localeOf } from './language/index.ts';
import { arrange } from './pile/arrange.ts';
import { collect, MOST_RECORDINGS } from './pile/collect.ts';
import type { Collected } from './pile/collect.ts';
import { sortPile } from './pile/crew.ts';
import type { CrewOptions } from './pile/crew.ts';
import { encodePile } from './pile/csv.ts';
import { pileObject } from './pile/json.ts';
import { keptFolder } from './pile/kept.ts';
import { leftOut } from './pile/left-out.ts';
import { drawPile } from './pile/lines.ts';
import { pagesOf } from './pile/pages.ts';
import { readStudents, Roster } from './pile/students.ts';
import type { Outcome, Pile, Recording } from './pile/types.ts';
import { deskLines } from './desk-lines.ts';
import { checkOutput, checkOutputFolder, writeOutput } from './output.ts';
import { readAmong } from './passage.ts';
import { EXIT, Problem, usageProblem } from './problems.ts';
import type { ExitCode } from './problems.ts';
import { createProgress } from './progress.ts';
import { systemTrouble, troubleProblem } from './sound.ts';
import type { Wiring } from './wiring.ts';

type DeskCommand = Extract<Command, { kind: 'desk' }>;

/** More helpers than this share memory and disk more than they win. */
const MOST_HELPERS = 4;

/** Folders of recordings → what each student played, for people, as a table, as pages or as JSON. */
export async function desk(command: DeskCommand, console: Console, wiring: Wiring): Promise<ExitCode> {
  await checkOutputs(command);
  const paths = await withListed(command.paths, command.archive.listFile);
  const roster = new Roster(await studentsOf(command));
  const collected = await collectAll({ ...command, paths }, roster);
  const { recordings } = collected;
  if (command.archive.linesFile !== null) {
    const byPath = recordings.map((one) => ({ ...one, name: pathOf(one) }));
    return deskLines(
      command,
      { ...collected, recordings: byPath },
      await crewOf(command, wiring.version),
      console,
    );
  }
  if (recordings.length > MOST_RECORDINGS) {
    throw usageProblem((t) => t.tooManyRecordings(recordings.length, MOST_RECORDINGS));
  }
  const outcomes = await sort(recordings, command, console, wiring.version);
  const pile = arrange(outcomes, collected.refused);
  const { csvFile } = command;
  const table = csvFile === null ? '' : encodePile(pile, command.language);
  if (csvFile !== null && csvFile !== '-') await writeOutput(csvFile, table);
  if (command.htmlFolder !== null) await savePages(command.htmlFolder, pile, wiring, command.language);
  if (csvFile === '-') console.put(table);
  else if (command.json) console.out(JSON.stringify(pileObject(pile, localeOf(command.language))));
  else if (outcomes.length + collected.refused.length > 0)
    for (const line of drawPile(pile, console.paper, command.language)) console.out(line);
  sayNewNames(roster, command, console);
  return sayProblems(pile, collected, outcomes, command, console);
}

async function studentsOf({ studentsFile: name }: DeskCommand): ReturnType<typeof readStudents> {
  try {
    return await readStudents(name);
  } catch (cause) {
    throw troubleProblem({ trouble: 'within', name: name ?? '', of: systemTrouble(cause) });
  }
}

/** Its path, and in an archive the name there: of an archive of any size no two are alike. */
function pathOf({ source: { path, member } }: Recording): string {
  return member === null ? path : join(path, member);
}

async function checkOutputs({
  paths,
  csvFile,
  htmlFolder,
  archive: { linesFile },
  studentsFile,
  force,
}: DeskCommand): Promise<void> {
  const options = { inputs: studentsFile === null ? paths : [...paths, studentsFile], force };
  if (csvFile !== null && csvFile !== '-') await checkOutput(csvFile, 'csv', options);
  if (htmlFolder !== null) await checkOutputFolder(htmlFolder, options);
  if (linesFile !== null && linesFile !== '-') await checkOutput(linesFile, 'lines', options);
}

async function collectAll(
  { paths, csvFile, htmlFolder, archive: { linesFile, listFile }, studentsFile }: DeskCommand,
  roster: Roster,
): Promise<Collected> {
  const own = [csvFile, htmlFolder, linesFile, studentsFile, listFile].filter((path) => path !== null);
  try {
    return await collect(paths, own, roster);
  } catch (cause) {
    const path = cause instanceof Error && 'path' in cause ? String(cause.path) : paths.join(' ');
    throw troubleProblem({ trouble: 'within', name: path, of: systemTrouble(cause) });
  }
}

async function sort(
  recordings: readonly Recording[],
  command: DeskCommand,
  console: Console,
  version: string,
): Promise<readonly Outcome[]> {
  const t = MESSAGES[command.language].desk;
  const progress = createProgress(console, '', command.quiet);
  let done = 0;
  const onInterrupt = (): void => {
    progress.clear();
    console.say(`evenfall: ${t.stopped(done, recordings.length)}`);
  };
  process.prependListener('SIGINT', onInterrupt);
  try {
    return await sortPile(recordings, await crewOf(command, version), (share, sorted) => {
      done = sorted;
      progress.show(share, t.progress(sorted, recordings.length));
    });
  } finally {
    process.removeListener('SIGINT', onInterrupt);
    progress.clear();
  }
}

async function crewOf(
  { workers, targetBpm, evennessPercent, amongFile, fresh }: DeskCommand,
  version: string,
): Promise<CrewOptions> {
  const command = process.argv[1]!;
  return {
    command,
    workers: workers ?? Math.min(availableParallelism(), MOST_HELPERS),
    targetBpm,
    evennessPercent,
    own: await readAmong(amongFile),
    // A newer build may hear otherwise, though its version is still the same.
    kept: { folder: keptFolder(process.env), version: `${version} ${statSync(command).mtimeMs}`, fresh },
  };
}

async function savePages(folder: string, pile: Pile, wiring: Wiring, language: Language): Promise<void> {
  for await (const { name, html } of pagesOf(pile, Date.now(), wiring, language))
    await writeOutput(join(folder, name), html);
}

/** Names that the file of students does not have were read out of paths only. */
function sayNewNames(
  { proposed }: Roster,
  { studentsFile, quiet, language }: DeskCommand,
  console: Console,
): void {
  if (studentsFile === null || quiet || proposed.length === 0) return;
  console.say(`evenfall: ${MESSAGES[language].desk.newNames(studentsFile, proposed)}`);
}

/** Says what went wrong, file by file, and returns the worst of it. */
function sayProblems(
  pile: Pile,
  { others, recordings }: Collected,
  outcomes: readonly Outcome[],
  { quiet, paths, language, json, csvFile }: DeskCommand,
  console: Console,
): ExitCode {
  const { desk: t } = MESSAGES[language];
  if (!quiet && others > 0) console.say(`evenfall: ${t.passedOver(others)}`);
  // The list has it already.
  if (json || csvFile === '-')
    for (const { file, reason } of leftOut(pile, language)) console.say(`evenfall: ${file}: ${reason}`);
  if (outcomes.some((one) => 'problem' in one && one.problem === 'failed')) return EXIT.ourFault;
  const { silent, unread } = pile;
  if (recordings.length === 0 && unread.length === 0)
    throw new Problem(EXIT.noPlaying, (t) => `${paths.join(' ')}: ${t.problems.noRecording}`);
  if (silent.length > 0) return EXIT.noPlaying;
  return unread.length > 0 ? EXIT.unreadable : EXIT.analysed;
}
