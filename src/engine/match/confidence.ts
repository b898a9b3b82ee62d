import type { Ranking } from './rank.ts';
import { sameFault } from './same-fault.ts';
import { FOLLOWING } from './weights.ts';

/**
 * Log odds that the best reading is the right one: a logistic model fitted to 720 findings on the development piano (npm run
 * bench:desk: attempts clean, with one to three mistakes and broken off, and playing that is no exercise), so that of findings
 * with a confidence of 0.7 seven in ten are right there. None of 600 whole attempts was wrong, hence the greatest.
 */
const LOG_ODDS = { alike: 6.6, strain: -10.4, strainSquared: -2.8, lead: 0.72 } as const;
const GREATEST = 0.995;
/**
 * One fault made the same way each time is a signature forgotten or another scale, as a church mode; a foreign note that comes again
 * and again is a slip of habit or another figure. Which is commoner has no source: as often the one as the other, so that it is asked
 * and not told.
 */
const MEANT_SO = { changed: 0.5, added: 0.5 } as const;
/** A lead of more, in units of one missed note, is as good as this. */
const MOST_LEAD = 4;

/** What the notes explain and how clearly → 0..1; what the piano's tuning leaves open is not in it. */
export function confidenceOf({ moments, ranked: [best, rival], idle }: Ranking): number {
  if (best === undefined) return 0;
  const { stretches } = best.account;
  const cost = stretches.reduce((sum, stretch) => sum + stretch.cost + FOLLOWING.begin, 0);
  const outside = best.account.cost - cost;
  /** the reading's faults against those that would make it no exercise at all */
  const strain = Math.min(1, Math.max(0, cost / Math.max(1e-9, idle - outside)));
  const lead = rival === undefined ? MOST_LEAD : rival.account.cost - best.account.cost;
  const logOdds =
    LOG_ODDS.alike +
    LOG_ODDS.strain * strain +
    LOG_ODDS.strainSquared * strain * strain +
    LOG_ODDS.lead * Math.min(MOST_LEAD, lead);
  const fault = sameFault(moments, best);
  return Math.min(GREATEST, 1 / (1 + Math.exp(-logOdds))) * (fault === null ? 1 : MEANT_SO[fault]);
}
