import { faultCount, workId, type Report } from '../../../engine/index.ts';

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

/** Whether two reports are of the same exercise, hands and all, and of the same work at it. */
export function sameExercise(a: Report, b: Report): boolean {
  const workOf = ({ exercise, practised }: Report): string => workId(exercise, practised?.intention);
  return workOf(a) === workOf(b);
}
