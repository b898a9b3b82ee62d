import type { Heard } from '../listen/index.ts';
import { follow, idleCost } from './follow.ts';
import type { Account } from './follow.ts';
import { momentsOf } from './moments.ts';
import type { Moment } from './moments.ts';
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
export function rank(heard: Heard, most: number): Ranking {
  const moments = momentsOf(heard.notes);
  const reach = { from: 0, to: moments.length };
  const ranked = shortlist(heard.notes, most)
    .map((listed) => ({ listed, account: follow(moments, [{ ...listed, ...reach }]) }))
    .filter(({ account }) => account.stretches.length > 0)
    .sort((a, b) => a.account.cost - b.account.cost);
  return { moments, ranked, idle: moments.reduce((sum, moment) => sum + idleCost(moment), 0) };
}
