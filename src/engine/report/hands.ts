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
    // Of a chord any key may be the first to sound: the lowest tells where the hand lies, as recognition has it.
    const first = report.notes.flatMap(({ step, verdict, midi }) =>
      step === 0 && verdict === 'correct' ? [midi] : [],
    );
    if (hands === 'together' || first.length === 0 || !isHandKnown(report)) return [];
    return [{ form, hand: hands, midi: Math.min(...first) }];
  });
}
