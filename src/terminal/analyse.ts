import { criteriaOf, handsPlayedIn, pianoAfter, settledTuning, tellNotice } from '../engine/index.ts';
import type { Assessment, ExerciseChoice, PianoProfile } from '../engine/index.ts';
import { listenInPieces } from '../io/analysis/pieces.ts';
import { withListed } from './archive.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { asOptions, drawReport } from './drawing/index.ts';
import { eachFile } from './each-file.ts';
import { MESSAGES, localeOf } from './language/index.ts';
import type { Messages } from './language/index.ts';
import { assessBy, openLevels } from './levels.ts';
import { checkOutput } from './output.ts';
import { readAmong } from './passage.ts';
import { openPiano } from './piano.ts';
import { EXIT, Problem } from './problems.ts';
import type { ExitCode } from './problems.ts';
import { createProgress } from './progress.ts';
import { displayName, openSound, STANDARD_INPUT } from './sound.ts';

type AnalyseCommand = Extract<Command, { kind: 'analyse' }>;

/**
 * Recordings → reports, for people or as one JSON object a line. Both hands are compared with hands alone wherever these stand in
 * the call, or in an earlier call with the same file for the piano.
 */
export async function analyse(asked: AnalyseCommand, console: Console): Promise<ExitCode> {
  const { linesFile, listFile } = asked.archive;
  const command = { ...asked, files: await withListed(asked.files, listFile) };
  if (linesFile !== null) {
    const options = { inputs: command.files, force: command.force };
    if (linesFile !== '-') await checkOutput(linesFile, 'analyses', options);
    return (await import('./analyse-lines.ts')).analyseLines(command, console);
  }
  const { files, choice, intention, asChosen, targetBpm, evennessPercent, language, pianoFile, json, quiet } =
    command;
  const kept = await openPiano(pianoFile);
  const levels = await openLevels(command.levelsFile);
  /** its tuning is presumed only where somebody said that it is one piano */
  const presumed = { piano: kept.known };
  let piano = kept.known;
  let { handsPlayed } = kept;
  const locale = localeOf(language);
  const t = MESSAGES[language];
  const criteria = criteriaOf(evennessPercent === null ? {} : { evennessPercent });
  const own = await readAmong(command.amongFile);
  const learnHands = files.length > 1 || pianoFile !== null;
  const worst = await eachFile(files, console, json, language, async (file, others) => {
    const name = displayName(file, t);
    const progress = createProgress(console, name, quiet);
    const audio = await openSound(file, name);
    if (!quiet && others === 'to come')
      for (const remark of audio.remarks) console.say(`evenfall: ${name}: ${tellNotice(remark, locale)}`);
    let assessment: Assessment;
    try {
      const { heard, sound } = await listenInPieces(audio, progress.show, presumed);
      const options = {
        targetBpm,
        criteria,
        intention,
        asChosen,
        piano,
        handsPlayed,
        learnHands,
        locale,
        own,
      };
      assessment = assessBy(levels, heard, choice, options, sound);
      if (learnHands && others === 'to come') {
        piano = settled(pianoAfter(piano, assessment), choice, assessment);
        if (file !== files.at(-1) && file !== STANDARD_INPUT && isBothHands(assessment)) return 'later';
      }
    } finally {
      progress.clear();
    }
    if (choice !== null && assessment.kind === 'report')
      handsPlayed = [...handsPlayed, ...handsPlayedIn([assessment.report])];
    switch (assessment.kind) {
      case 'no-playing': {
        const { reason } = assessment;
        throw new Problem(
          EXIT.noPlaying,
          (t) => `${name}: ${t.problems.noPlaying(tellNotice(reason, locale))}`,
        );
      }
      case 'not-recognised': {
        const { heard, reason, nearest } = assessment;
        throw new Problem(
          EXIT.noPlaying,
          ({ problems }) =>
            `${name}: ${problems.noExercise(heard.notes.length, tellNotice(reason, locale))} ${nearestWords(nearest, problems)}`,
        );
      }
      case 'report': {
        const { report } = assessment;
        if (json) return [JSON.stringify(files.length > 1 ? { file, ...report } : report)];
        return drawReport(report, console.paper, language);
      }
    }
  });
  if (piano !== null) await kept.write(piano, handsPlayed);
  return worst;
}

/** An exercise that was chosen tells which of two keys a semitone apart was struck, and so the tuning of the piano. */
function settled(
  piano: PianoProfile | null,
  choice: ExerciseChoice | null,
  assessment: Assessment,
): PianoProfile | null {
  if (piano === null || choice === null || assessment.kind !== 'report') return piano;
  const settledCents = settledTuning(assessment.report);
  return settledCents === null ? piano : { ...piano, settledCents };
}

function isBothHands(assessment: Assessment): boolean {
  return assessment.kind === 'report' && assessment.alignment.exercise.choice.hands === 'together';
}

/** How to choose what it comes nearest to. */
function nearestWords(nearest: readonly ExerciseChoice[], t: Messages['problems']): string {
  if (nearest.length === 0) return t.howToChoose;
  return [t.nearest, ...nearest.map((choice) => `  ${asOptions(choice)}`)].join('\n');
}
