import { summarise } from '../../engine/index.ts';
import type { Report } from '../../engine/index.ts';
import type { Playing } from './types.ts';

/** What of a report is kept with the list. */
export function toldBy(
  report: Report | null,
): Pick<Playing, 'summary' | 'evennessPlusMinus' | 'verdict' | 'words'> {
  if (report === null) return { summary: null, evennessPlusMinus: null, verdict: '', words: null };
  const { evennessPercent } = report.measures;
  return {
    summary: summarise(report),
    evennessPlusMinus: 'value' in evennessPercent ? (evennessPercent.plusMinus ?? null) : null,
    verdict: report.words.verdict,
    words: report.words,
  };
}
