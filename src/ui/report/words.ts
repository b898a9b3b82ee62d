import type { CourseRemark, Report } from '../../engine/index.ts';
import { withUnit } from '../kit/figures.ts';

/** A verdict cut at what is to be underlined. */
export interface SplitVerdict {
  readonly before: string;
  readonly emphasis: string;
  readonly after: string;
}

/** Verdict and its emphasis → three pieces; an emphasis that does not stand in it underlines nothing. */
export function splitVerdict(verdict: string, emphasis: string): SplitVerdict {
  const at = emphasis === '' ? -1 : verdict.indexOf(emphasis);
  if (at < 0) return { before: verdict, emphasis: '', after: '' };
  return { before: verdict.slice(0, at), emphasis, after: verdict.slice(at + emphasis.length) };
}

/** Things about the recording and the course of the attempt that are no mistake but worth knowing. */
export function remarkLines(report: Report, soundRemarks: readonly string[]): readonly string[] {
  return [
    ...report.remarks.flatMap(remarkLine),
    ...report.audio.findings.map((finding) => finding.detail),
    ...soundRemarks,
  ];
}

function remarkLine(remark: CourseRemark): readonly string[] {
  switch (remark.kind) {
    case 'other-octave': {
      const octaves = Math.abs(remark.octaveShift);
      const distance = octaves === 1 ? 'an octave' : `${octaves} octaves`;
      const who = remark.hand === undefined ? 'Played' : `The ${remark.hand} hand played`;
      return [
        `${who} ${distance} ${remark.octaveShift > 0 ? 'higher' : 'lower'} than written; that is no mistake.`,
      ];
    }
    case 'played-again':
      return [
        `The exercise was played ${remark.passages.length + 1} times; this is the report of one of them.`,
      ];
    case 'stopped':
      return [`A stop of ${withUnit(remark.gapSec.toFixed(1), 's')} before note ${remark.atStep + 1}.`];
    default:
      return [];
  }
}
