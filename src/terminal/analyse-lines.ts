import { criteriaOf, tellNotice } from '../engine/index.ts';
import type { ExerciseChoice, Report } from '../engine/index.ts';
import { listenInPieces } from '../io/analysis/pieces.ts';
import { openArchive } from './lines.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { ourFault } from './each-file.ts';
import { localeOf, MESSAGES } from './language/index.ts';
import { assessBy, openLevels } from './levels.ts';
import { readAmong } from './passage.ts';
import { openPiano } from './piano.ts';
import { EXIT, Problem } from './problems.ts';
import type { ExitCode } from './problems.ts';
import { createProgress } from './progress.ts';
import { displayName, openSound } from './sound.ts';

type AnalyseCommand = Extract<Command, { kind: 'analyse' }>;

/** What one line tells of one recording; version 1 may gain fields, and none goes or changes its meaning. */
interface AnalysisLine {
  readonly format: 'evenfall-analysis';
  readonly version: 1;
  readonly file: string;
  readonly report: Report | null;
  /** why there is no report, '' where there is one */
  readonly reason: string;
  /** what it comes nearest to where it was not recognised, likeliest first */
  readonly nearest: readonly ExerciseChoice[];
}

/**
 * An archive of any size → one line a recording, as soon as it is done; none is compared with another, so that every part comes to
 * the same whatever the parts are. A file of lines is gone on with.
 */
export async function analyseLines(command: AnalyseCommand, console: Console): Promise<ExitCode> {
  const { files, language, quiet } = command;
  const { linesFile, shard } = command.archive;
  const lines = await openArchive(linesFile ?? '-', shard, console);
  const left = [...new Set(files)].filter((file) => !lines.has(file));
  const progress = createProgress(console, '', quiet);
  const hear = await hearerFor(command);
  let worst: ExitCode = EXIT.analysed;
  try {
    for (const [done, file] of left.entries()) {
      progress.show(done / left.length, MESSAGES[language].desk.progress(done, left.length));
      const { line, code } = await hear(file);
      await lines.add(line);
      worst = Math.max(worst, code) as ExitCode;
    }
  } finally {
    progress.clear();
    await lines.close();
  }
  return worst;
}

type Outcome = Pick<AnalysisLine, 'report' | 'reason'> & Partial<AnalysisLine>;

async function hearerFor(command: AnalyseCommand) {
  const { choice, intention, asChosen, targetBpm, evennessPercent, language } = command;
  const { known: piano, handsPlayed } = await openPiano(command.pianoFile);
  const own = await readAmong(command.amongFile);
  const levels = await openLevels(command.levelsFile);
  const locale = localeOf(language);
  const criteria = criteriaOf(evennessPercent === null ? {} : { evennessPercent });
  const outcomeOf = async (file: string): Promise<Outcome> => {
    const audio = await openSound(file, displayName(file, MESSAGES[language]));
    const { heard, sound } = await listenInPieces(audio, () => undefined, { piano });
    const options = { targetBpm, criteria, intention, asChosen, piano, handsPlayed, locale, own };
    const assessment = assessBy(levels, heard, choice, options, sound);
    if (assessment.kind === 'report') return { report: assessment.report, reason: '' };
    const reason = tellNotice(assessment.reason, locale);
    return 'nearest' in assessment
      ? { report: null, reason, nearest: assessment.nearest }
      : { report: null, reason };
  };
  return async (file: string): Promise<{ readonly line: AnalysisLine; readonly code: ExitCode }> => {
    const head = { format: 'evenfall-analysis', version: 1, file, nearest: [] } as const;
    try {
      const outcome = await outcomeOf(file);
      return {
        line: { ...head, ...outcome },
        code: outcome.report === null ? EXIT.noPlaying : EXIT.analysed,
      };
    } catch (cause) {
      const problem = cause instanceof Problem ? cause : ourFault(file, cause);
      return { line: { ...head, report: null, reason: problem.in(language) }, code: problem.exitCode };
    }
  };
}
