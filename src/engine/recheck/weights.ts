import type { Evidence } from './types.ts';

/**
 * Evidence by name → its weight in the log odds that the key was struck: a logistic model fitted to the 559 notes that match
 * left in doubt in 77 rendered attempts hands together of the development piano, 3 to 25 steps in a hundred with a note left
 * out, mostly of the upper hand, the hands unequal by −4 … +7 dB. Tried beside these and of no further use there: how far the
 * even partials of the note an octave below stand over its odd ones (by itself, against the attempt's other octaves, against
 * the same key), how far its onset lies from that note's, whether the key sounds on, and how surely the hand is heard.
 */
export const RECHECK_WEIGHTS: Readonly<Record<keyof Evidence | 'bias', number>> = {
  belief: 0.98,
  softness: 2.58,
  bias: 4.18,
};

export const RECHECK_BOUNDS = {
  /** a chord is spread and hands come apart by so much at most, s */
  nearSec: 0.09,
  /**
   * more probable than `struck`: struck; less than `notStruck`: not struck; unsure between. On the attempts of the fit 0.9
   * finds 77 of 100 notes in doubt that were struck and 5 of 100 that were not (0.95: 62 and 3; 0.85: 82 and 8); 0.1 calls
   * 1 of 100 struck ones missed.
   */
  struck: 0.9,
  notStruck: 0.1,
  /** belief counts between these: below the one the ear says nothing */
  leastBelief: 0.003,
  mostBelief: 0.98,
  softest: -3,
  loudest: 2,
  /** with fewer heard notes of the same hand, what is usual stands in for them */
  leastHeard: 2,
  usualSoftness: -1,
} as const;
