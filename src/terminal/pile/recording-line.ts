import { tellKept, tellNotice } from '../../engine/index.ts';
import type { Recognition, Report } from '../../engine/index.ts';
import { tellTrouble } from '../../io/troubles/index.ts';
import type { Trouble } from '../../io/troubles/index.ts';
import { localeOf } from '../language/index.ts';
import type { Language } from '../../engine/index.ts';
import { time } from './json.ts';
import type { Outcome } from './types.ts';

/** What one line tells of one recording; version 1 may gain fields, and none goes or changes its meaning. */
export interface RecordingLine {
  readonly format: 'evenfall-recording';
  readonly version: 1;
  readonly file: string;
  /** '' where nothing names anybody */
  readonly student: string;
  /** ISO 8601; null: not known */
  readonly recorded: string | null;
  /** null: it could not be read */
  readonly durationSec: number | null;
  readonly attempts: readonly {
    readonly startSec: number;
    readonly endSec: number;
    readonly recognition: Recognition;
    readonly report: Report | null;
    /** why there is no report, '' where there is one */
    readonly reason: string;
  }[];
  /** why there are no attempts, '' where there are some */
  readonly reason: string;
  /** what of it was left out or could not be read */
  readonly remarks: readonly string[];
}

/** What became of a recording → its line. */
export function recordingLine(outcome: Outcome, language: Language): RecordingLine {
  const { name, student, whenMs } = outcome.recording;
  const head = { ...headOf(name, student), recorded: time(whenMs) };
  if (!('sorted' in outcome)) return { ...head, reason: reasonOf(name, outcome.trouble, language) };
  const locale = localeOf(language);
  const { durationSec, attempts, reason, remarks } = outcome.sorted;
  return {
    ...head,
    durationSec,
    attempts: attempts.map((one) => ({
      startSec: one.startSec,
      endSec: one.endSec,
      recognition: one.recognition,
      report: one.report,
      reason: tellKept(one.reason, locale),
    })),
    reason: tellKept(reason, locale),
    remarks: remarks.map((one) => tellNotice(one, locale)),
  };
}

/** What could not be opened at all → its line. */
export function refusedLine(name: string, why: Trouble, language: Language): RecordingLine {
  return { ...headOf(name, ''), recorded: null, reason: reasonOf(name, why, language) };
}

function headOf(file: string, student: string) {
  const head = { format: 'evenfall-recording', version: 1, file, student } as const;
  return { ...head, durationSec: null, attempts: [], remarks: [] };
}

/** Without the file's name, which the line has. */
function reasonOf(name: string, why: Trouble, language: Language): string {
  return tellTrouble(why.trouble === 'within' && why.name === name ? why.of : why, language);
}
