import type { Hand } from '../exercise/index.ts';
import { densityOf, quantile } from '../base/statistics.ts';
import type { Alignment } from '../match/index.ts';

/**
 * Was a hand there at all? One unknown for the whole attempt, and then what is usual of its notes: a hand that was clearly there at some
 * steps was most likely there at the others, and what was left out lies far below what its other notes show.
 */

/** Who says that both hands play seldom leaves one out, and of a hand that plays few notes (common practice, no source). */
const PLAYS = 0.97;
const LEFT_OUT = 0.02;
/**
 * Log odds of the closer look at notes of the upper of two hands, development piano and Iowa's: of a hand that is not there (87 attempts,
 * a voice, noise and a room of 1.2 s among them: 1591 notes, mean 0.5, SD 1.2, one in a hundred over 3, two over 5); and of one that is, softer than the
 * other rather than not, where it strikes and where it leaves a note out.
 */
const ABSENT = { mean: 0.5, sd: 1.3, straySd: 5, strays: 0.005 } as const;
const STRUCK = { mean: 3.5, sd: 3 } as const;
const OUT = { mean: -2.5, sd: 2.5 } as const;
/** the same of a note left out by a hand that is heard well, and the least scatter of the struck ones of one attempt */
const OUT_CLEARLY = { mean: -4.6, sd: 2.5 } as const;
const LEAST_SD = 3;
/** a quarter of a normal distribution lies more than so many SD below its middle */
const QUARTER_SD = 0.674;
/** of the notes of a hand that plays, so many are taken to be struck, lest one that stops half-way be lost */
const SHARE_STRUCK = 0.9;
/** No note tells more than this, and, since errors on one piano are alike, each tells half of what it says. */
const MOST_TOLD = 5;
const INDEPENDENT = 0.5;
/**
 * So sure, log odds: 95 in a hundred, and one in ten. Of those 87 attempts none is told to have the hand and 19 are left open; of 320 in which both
 * play, as unequal as ±12 dB, one is told to lack it and 4 are left open. With the weights of today (mean 0.2, SD 1.0) none of 40 and 4 open; none of 176
 * and one.
 */
const THERE = 3;
const NOT_THERE = -2.2;

/** What the closer look made of both hands over an attempt. */
export interface HandHeard {
  readonly presence: 'there' | 'not-there' | 'unknown';
  /** log odds at a note of the hand → how likely the note was left out, 0..1, going by the hand's other notes */
  readonly leftOut: (logOdds: number) => number;
}

/** Log odds of the closer look at all written notes, in the order of `matched` (null: not asked) → each hand as it was heard. */
export function handsHeard(
  { matched }: Alignment,
  logOdds: readonly (number | null)[],
): Readonly<Record<Hand, HandHeard>> {
  const of = (hand: Hand): HandHeard => {
    const own = matched.flatMap(({ expected }, place) =>
      expected.hand === hand ? (logOdds[place] ?? []) : [],
    );
    return { presence: presenceOf(own), leftOut: leftOutAmong(own) };
  };
  return { left: of('left'), right: of('right') };
}

/** Log odds of the closer look at a hand's notes → whether it plays at all. */
export function presenceOf(own: readonly number[]): HandHeard['presence'] {
  const told = own.reduce((sum, one) => sum + INDEPENDENT * evidence(one), 0);
  const sure = Math.log(PLAYS / (1 - PLAYS)) + told;
  if (sure > THERE) return 'there';
  return sure < NOT_THERE ? 'not-there' : 'unknown';
}

/** How much likelier such log odds are of a hand that is there; what lies below the middle of one that is not says no more than that. */
function evidence(logOdds: number): number {
  const seen = Math.max(logOdds, ABSENT.mean);
  const there = SHARE_STRUCK * densityOf(seen, STRUCK) + (1 - SHARE_STRUCK) * densityOf(seen, OUT);
  const stray = densityOf(seen, { mean: ABSENT.mean, sd: ABSENT.straySd });
  const absent = (1 - ABSENT.strays) * densityOf(seen, ABSENT) + ABSENT.strays * stray;
  return Math.min(MOST_TOLD, Math.log(there / absent));
}

/** The hand's struck notes lie about the middle of those that sound struck, as far as the lower quarter of them does. */
function leftOutAmong(own: readonly number[]): HandHeard['leftOut'] {
  const sounding = own.filter((one) => one > 0);
  const mean = quantile(sounding, 0.5) ?? STRUCK.mean;
  const quarter = quantile(sounding, 0.25) ?? mean;
  const sd = Math.max(LEAST_SD, (mean - quarter) / QUARTER_SD);
  return (logOdds) => {
    const out = LEFT_OUT * densityOf(Math.max(logOdds, OUT_CLEARLY.mean), OUT_CLEARLY);
    const struck = (1 - LEFT_OUT) * densityOf(Math.min(logOdds, mean), { mean, sd });
    return out / (out + struck);
  };
}
