import { mergeHands } from '../../engine/index.ts';
import type { HandsAlone } from '../../engine/index.ts';
import { inTime } from './arrange.ts';
import type { SortedOne } from './arrange.ts';
import type { Outcome, Recording } from './types.ts';

/** Whether two recordings are of one student and one day (of the clock here): of one piano, most likely. */
export function isSameDay(one: Recording, other: Recording): boolean {
  return one.student === other.student && dayOf(one) !== null && dayOf(one) === dayOf(other);
}

function dayOf({ whenMs }: Recording): number | null {
  return whenMs === null ? null : new Date(whenMs).setHours(0, 0, 0, 0);
}

/**
 * Recordings, each sorted by itself → for each, in the same order, what the others of its student and day taught of hands alone;
 * null where they taught nothing, or nothing in it was played by both hands.
 */
export function aloneElsewhere(outcomes: readonly Outcome[]): readonly (HandsAlone | null)[] {
  const inOrder = outcomes.flatMap((one) => ('sorted' in one ? [one] : [])).sort(inTime);
  return outcomes.map((one) => {
    if (!('sorted' in one) || !hasBoth(one)) return null;
    return inOrder
      .filter((other) => other !== one && isSameDay(other.recording, one.recording))
      .flatMap(({ sorted }) => sorted.attempts)
      .reduce<HandsAlone | null>((known, { alone }) => mergeHands(known, alone ?? null), null);
  });
}

function hasBoth({ sorted }: SortedOne): boolean {
  return sorted.attempts.some(({ recognition }) => recognition.choice?.hands === 'together');
}
