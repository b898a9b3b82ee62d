import type { Assessment } from '../engine/index.ts';
import { analyseInPieces } from '../io/analysis/pieces.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { drawReport } from './drawing/index.ts';
import { eachFile } from './each-file.ts';
import { EXIT, Problem } from './problems.ts';
import type { ExitCode } from './problems.ts';
import { createProgress } from './progress.ts';
import { displayName, openSound } from './sound.ts';

type AnalyseCommand = Extract<Command, { kind: 'analyse' }>;

/** Recordings → reports, for people or as one JSON object a line. */
export function analyse(command: AnalyseCommand, console: Console): Promise<ExitCode> {
  const { files, choice, targetBpm, json, quiet } = command;
  return eachFile(files, console, json, async (file) => {
    const name = displayName(file);
    const progress = createProgress(console, name, quiet);
    const audio = await openSound(file);
    if (!quiet) for (const remark of audio.remarks) console.say(`evenfall: ${name}: ${remark}`);
    let assessment: Assessment;
    try {
      assessment = await analyseInPieces(audio, choice, { targetBpm }, progress.show);
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
            'On the command line: --key, --form and --hands.',
        );
      case 'report': {
        const { report } = assessment;
        if (json) return [JSON.stringify(files.length > 1 ? { file, ...report } : report)];
        return drawReport(report, console.paper);
      }
    }
  });
}
