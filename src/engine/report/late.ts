import { isHandKnown } from './hands.ts';
import type { CrossingDelay, Report } from './types.ts';

/**
 * The crossings of a report that came late. Where nobody said which hand played, they would lie elsewhere for the other one: then
 * those alone whose note is told to come late whichever hand it was, so that picture and words agree.
 */
export function lateCrossings(report: Report): readonly CrossingDelay[] {
  const late = report.measures.crossings.filter((one) => one.late);
  if (isHandKnown(report)) return late;
  const told = new Set(
    report.words.said?.statements.flatMap(({ situation, steps }) => (situation === 'late-note' ? steps : [])),
  );
  return report.measures.crossings.filter(({ step }) => told.has(step));
}
