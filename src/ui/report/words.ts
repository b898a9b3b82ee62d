import type { CourseRemark, KeptNotice, Report } from '../../engine/index.ts';
import { shown, withUnit } from '../kit/figures.ts';
import { unbroken } from '../kit/unbroken.ts';
import { notice, strings } from '../language/index.ts';

/** A verdict cut at what is to be underlined. */
export interface SplitVerdict {
  readonly before: string;
  readonly emphasis: string;
  readonly after: string;
}

/** Verdict and its emphasis → three pieces; an emphasis that does not stand in it underlines nothing. */
export function splitVerdict(words: string, underlined: string): SplitVerdict {
  const verdict = unbroken(words);
  const emphasis = unbroken(underlined);
  const at = emphasis === '' ? -1 : verdict.indexOf(emphasis);
  if (at < 0) return { before: verdict, emphasis: '', after: '' };
  return { before: verdict.slice(0, at), emphasis, after: verdict.slice(at + emphasis.length) };
}

/** Things about the recording and the course of the attempt that are no mistake but worth knowing. */
export function remarkLines(report: Report, soundRemarks: readonly KeptNotice[]): readonly string[] {
  return [
    ...report.remarks.flatMap(remarkLine),
    ...report.audio.findings.map((finding) => notice(finding.notice ?? finding.detail)),
    ...soundRemarks.map(notice),
  ];
}

function remarkLine(remark: CourseRemark): readonly string[] {
  const t = strings().report;
  switch (remark.kind) {
    case 'other-octave':
      return [t.otherOctave(remark.octaveShift, remark.hand ?? null)];
    case 'played-again':
      return [t.playedAgain(remark.passages.length + 1)];
    case 'stopped':
      return [t.stopBefore(withUnit(shown(remark.gapSec, 1), 's'), remark.atStep + 1)];
    default:
      return [];
  }
}
