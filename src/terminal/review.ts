import { readReview, ReviewError } from '../io/review/index.ts';
import type { Review } from '../io/review/index.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { drawReview } from './drawing/review.ts';
import { MESSAGES } from './language/index.ts';
import { eachFile } from './each-file.ts';
import { checkOutput, writeOutput } from './output.ts';
import type { ExitCode } from './problems.ts';
import { bytesOf, displayName, troubleProblem } from './sound.ts';
import type { Wiring } from './wiring.ts';

type ReviewCommand = Extract<Command, { kind: 'review' }>;

/** Review files → what they say, for people or as one JSON object a line; and one page, where that is asked for. */
export function review(
  { files, htmlFile, force, language, json }: ReviewCommand,
  console: Console,
  writePage: Wiring['writePage'],
): Promise<ExitCode> {
  return eachFile(files, console, json, language, async (file) => {
    if (htmlFile !== null && htmlFile !== '-') await checkOutput(htmlFile, 'html', { inputs: files, force });
    const read = await open(file, displayName(file, MESSAGES[language]));
    if (htmlFile !== null) {
      const page = await writePage(read, language);
      if (htmlFile === '-') {
        console.put(page);
        return [];
      }
      await writeOutput(htmlFile, page);
    }
    if (!json) return drawReview(read, console.paper, language);
    const told = reviewObject(read);
    return [JSON.stringify(files.length > 1 ? { file, ...told } : told)];
  });
}

async function open(file: string, name: string): Promise<Review> {
  const bytes = await bytesOf(file);
  try {
    return await readReview(new Blob([bytes]));
  } catch (cause) {
    if (!(cause instanceof ReviewError)) throw cause;
    throw troubleProblem({ trouble: 'within', name, of: cause.trouble });
  }
}

/** The JSON of a review: as review.schema.json names things, with the reports in it and without the bytes of sounds. */
function reviewObject(told: Review) {
  const sizeOf = (sound: Review['attempts'][number]['sound']) =>
    sound === null ? null : { mime: sound.mime, bytes: sound.bytes.length };
  return {
    format: 'evenfall-review',
    version: 1,
    ...told,
    attempts: told.attempts.map((attempt) => ({
      ...attempt,
      sound: sizeOf(attempt.sound),
      remarks: attempt.remarks.map((remark) => ({ ...remark, voice: sizeOf(remark.voice) })),
    })),
  };
}
