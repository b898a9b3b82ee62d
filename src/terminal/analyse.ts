import { assessHeard, pianoAfter } from '../engine/index.ts';
import type { Assessment, ExerciseChoice } from '../engine/index.ts';
import { listenInPieces } from '../io/analysis/pieces.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { asOptions, drawReport } from './drawing/index.ts';
import { eachFile } from './each-file.ts';
import { localeOf } from './language/index.ts';
import { openPiano } from './piano.ts';
import { EXIT, Problem } from './problems.ts';
import type { ExitCode } from './problems.ts';
import { createProgress } from './progress.ts';
import { displayName, openSound } from './sound.ts';

type AnalyseCommand = Extract<Command, { kind: 'analyse' }>;

/**
 * Recordings → reports, for people or as one JSON object a line. Hands alone teach what follows them: both hands are compared with
 * them where they come later in the call, or in a later call with the same file for the piano.
 */
export async function analyse(command: AnalyseCommand, console: Console): Promise<ExitCode> {
  const { files, choice, asChosen, targetBpm, language, pianoFile, json, quiet } = command;
  const kept = await openPiano(pianoFile);
  /** its tuning is presumed only where somebody said that it is one piano */
  const presumed = { piano: kept.known };
  let piano = kept.known;
  const learnHands = files.length > 1 || pianoFile !== null;
  const worst = await eachFile(files, console, json, async (file) => {
    const name = displayName(file);
    const progress = createProgress(console, name, quiet);
    const audio = await openSound(file);
    if (!quiet) for (const remark of audio.remarks) console.say(`evenfall: ${name}: ${remark}`);
    let assessment: Assessment;
    try {
      const { heard, sound } = await listenInPieces(audio, progress.show, presumed);
      assessment = assessHeard(
        heard,
        choice,
        { targetBpm, asChosen, piano, learnHands, locale: localeOf(language) },
        sound,
      );
      if (learnHands) piano = pianoAfter(piano, assessment);
    } finally {
      progress.clear();
    }
    switch (assessment.kind) {
      case 'no-playing':
        throw new Problem(EXIT.noPlaying, `${name}: No playing was found in it. ${assessment.reason}`);
      case 'not-recognised':
        throw new Problem(
          EXIT.noPlaying,
          `${name}: ${assessment.heard.notes.length} notes were heard, but no exercise in them. ${assessment.reason} ` +
            nearestWords(assessment.nearest),
        );
      case 'report': {
        const { report } = assessment;
        if (json) return [JSON.stringify(files.length > 1 ? { file, ...report } : report)];
        return drawReport(report, console.paper, language);
      }
    }
  });
  if (piano !== null) await kept.write(piano);
  return worst;
}

/** How to choose what it comes nearest to. */
function nearestWords(nearest: readonly ExerciseChoice[]): string {
  if (nearest.length === 0) return 'On the command line: --key, --form and --hands.';
  return ['What comes nearest:', ...nearest.map((choice) => `  ${asOptions(choice)}`)].join('\n');
}
