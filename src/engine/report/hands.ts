import type { HandPlayed } from '../match/index.ts';
import type { CrossingDelay, Report } from './types.ts';

/** Whether somebody said which hand played; where nobody did, a hand is only the likelier one and nothing may be claimed of it. */
export function isHandKnown({
  exercise: { hands, handLikelihood },
}: {
  readonly exercise: Pick<Report['exercise'], 'hands' | 'handLikelihood'>;
}): boolean {
  if (hands === 'together') return true;
  return handLikelihood !== undefined && Math.max(handLikelihood.left, handLikelihood.right) === 1;
}

/** The crossings of a report. Where nobody said which hand played there are none: they would lie elsewhere for the other one. */
export function crossingsOf(report: Report): readonly CrossingDelay[] {
  return isHandKnown(report) ? report.measures.crossings : [];
}

export function lateCrossings(report: Report): readonly CrossingDelay[] {
  return crossingsOf(report).filter(({ late }) => late);
}

/** Reports of one player → where each hand is known to have played, for recognising the hand of further attempts. */
export function handsPlayedIn(reports: readonly Report[]): readonly HandPlayed[] {
  return reports.flatMap((report): readonly HandPlayed[] => {
    const { form, hands } = report.exercise;
    const first = report.notes.find(({ step, verdict }) => step === 0 && verdict === 'correct');
    if (hands === 'together' || first === undefined || !isHandKnown(report)) return [];
    return [{ form, hand: hands, midi: first.midi }];
  });
}
