import { faultCount, sameIntention, samePassage } from '../../../engine/index.ts';
import type { Report } from '../../../engine/index.ts';

/** Attempts of one exercise → the best: the fewest mistakes, then the most even in time; the earlier of two alike. */
export function bestOf<T extends { readonly report: Report }>(attempts: readonly T[]): T | null {
  const unevenness = ({ report }: T): number => {
    const { evennessPercent } = report.measures;
    return 'value' in evennessPercent ? evennessPercent.value : Infinity;
  };
  return attempts.reduce<T | null>((best, one) => {
    if (best === null) return one;
    const more = faultCount(best.report) - faultCount(one.report);
    if (more !== 0) return more > 0 ? one : best;
    return unevenness(one) < unevenness(best) ? one : best;
  }, null);
}

/** Whether two reports are of the same exercise, hands and all. */
export function sameExercise(a: Report, b: Report): boolean {
  const [x, y] = [a.exercise, b.exercise];
  return (
    x.key === y.key &&
    x.form === y.form &&
    x.hands === y.hands &&
    x.octaves === y.octaves &&
    x.minorScale === y.minorScale &&
    samePassage(x.passage, y.passage) &&
    samePractice(a, b)
  );
}

/** Both of the whole, or of the same work at it. */
function samePractice({ practised: a }: Report, { practised: b }: Report): boolean {
  return a === undefined || b === undefined ? a === b : sameIntention(a.intention, b.intention);
}
