import { isHandKnown, type Assessment, type ExerciseChoice, type Hands } from '../../engine/index.ts';
import { handsAsked } from '../kit/hand-keys.ts';
import { strings } from '../language/index.ts';
import { shownTitle } from '../names/index.ts';

/** What an attempt may have been instead, each one touch away: it is told again as that. */
export interface Meant {
  /** what is not known; '' where the touches say it themselves */
  readonly asked: string;
  readonly ways: readonly { readonly label: string; readonly choice: ExerciseChoice }[];
}

/** Told attempt → what it is asked about: what comes nearest, what had been chosen, which hand; the likelier first. */
export function meantBy(assessment: Assessment): Meant {
  const { report: t, stand, frame } = strings();
  if (assessment.kind === 'not-recognised') {
    const ways = assessment.nearest.map((choice) => ({ label: frame.measureAs(shownTitle(choice)), choice }));
    return { asked: '', ways };
  }
  if (assessment.kind !== 'report') return NOTHING;
  const { report, alignment } = assessment;
  if (report.chosen !== undefined)
    return { asked: '', ways: [{ label: t.meant(shownTitle(report.chosen)), choice: report.chosen }] };
  const { handLikelihood } = report.exercise;
  if (handLikelihood === undefined || isHandKnown(report)) return NOTHING;
  const { choice } = alignment.exercise;
  const ways = handsAsked(choice.form, handLikelihood).map((hands) => ({
    label: t.wasHand[hands],
    choice: { ...choice, hands },
  }));
  return { asked: stand.handNotKnown, ways };
}

/** What is asked, answered by hands; null: no hand is asked for. */
export function answeredBy({ asked, ways }: Meant, hands: Hands): ExerciseChoice | null {
  return asked === '' ? null : (ways.find(({ choice }) => choice.hands === hands)?.choice ?? null);
}

const NOTHING: Meant = { asked: '', ways: [] };
