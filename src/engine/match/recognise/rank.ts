import { probabilityOf } from '../../base/odds.ts';
import { isCommonElsewhere } from '../../exercise/index.ts';
import type { Heard } from '../../listen/index.ts';
import { FOLLOWING } from '../costs/index.ts';
import { follow, idleCost } from './follow.ts';
import type { Account } from './follow.ts';
import { momentsOf } from './moments.ts';
import type { Moment } from './moments.ts';
import type { OwnTemplate } from './own.ts';
import { shortlist } from './shortlist.ts';
import type { Listed } from './shortlist.ts';

/** An exercise as the only one that may have been played: what it makes of the notes. */
export interface Ranked {
  readonly listed: Listed;
  readonly account: Account<Listed>;
}

export interface Ranking {
  readonly moments: readonly Moment[];
  /** cheapest first */
  readonly ranked: readonly Ranked[];
  /** what the notes cost if they are no exercise */
  readonly idle: number;
}

/** Heard notes → the exercises that may have been played, each by itself, the one that explains all of them best first. */
export function rank(heard: Pick<Heard, 'notes'>, own: readonly OwnTemplate[] = []): Ranking {
  const moments = momentsOf(heard.notes);
  const reach = { from: 0, to: moments.length };
  const ranked = shortlist(heard.notes, own)
    .map((listed) => ({ listed, account: follow(moments, [{ ...listed, ...reach }]) }))
    .filter(({ account }) => account.stretches.length > 0)
    .sort((a, b) => a.account.cost - b.account.cost);
  return { moments, ranked, idle: moments.reduce((sum, moment) => sum + idleCost(moment), 0) };
}

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
/**
 * What songs are full of may be one of them where it has more faults than this, in units of one missed note: two notes of a cadence make
 * another turn of chords. Which is commoner has no source either.
 */
const FAULTS_OF_ITS_OWN = 1.5;
const MEANT_AS_SONG = 0.5;
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
  const isSong =
    isCommonElsewhere(best.listed.template.choice.form) &&
    stretches.some((stretch) => stretch.cost > FAULTS_OF_ITS_OWN);
  const meantSo = (fault === null ? 1 : MEANT_SO[fault]) * (isSong ? MEANT_AS_SONG : 1);
  return Math.min(GREATEST, probabilityOf(logOdds)) * meantSo;
}

/** Doubted findings are nobody's fault. */
const SURE = 0.75;
/** A note that is foreign to the exercise so often was meant. */
const MEANT = 3;
/** A note is replaced by one no further off than this, semitones. */
const BESIDE = 2;

/**
 * One fault made the same way each time, of a reading of what was heard: `changed`, where one note of the exercise never sounds
 * and its neighbour does in its place, as when an accidental of the signature is forgotten, or in a church mode; `added`, where
 * a foreign note comes again and again, as the seventh in a seventh chord's arpeggio; null, where faults are as chance has them.
 */
function sameFault(
  moments: readonly Moment[],
  { listed: { template, semitones }, account }: Ranked,
): 'changed' | 'added' | null {
  const expected = new Array<number>(12).fill(0);
  template.keys.forEach((midi, at) => (expected[(midi + semitones) % 12]! += template.times[at]!));
  const heard = new Array<number>(12).fill(0);
  for (const { from, to } of account.stretches)
    for (const { keys, weights } of moments.slice(from, to + 1))
      keys.forEach((midi, at) => (heard[midi % 12]! += weights[at]! >= SURE ? 1 : 0));
  const foreign = heard.map((count, note) => (expected[note] === 0 ? count : 0));
  const isChanged = expected.some((count, note) => {
    if (count < 2 || heard[note]! > 0) return false;
    return foreign.some((times, other) => times >= 2 && apart(note, other) <= BESIDE);
  });
  if (isChanged) return 'changed';
  return Math.max(...foreign) >= MEANT ? 'added' : null;
}

function apart(one: number, other: number): number {
  const up = (((one - other) % 12) + 12) % 12;
  return Math.min(up, 12 - up);
}
