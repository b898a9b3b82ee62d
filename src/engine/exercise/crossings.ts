import type { Crossing, Hand } from './types.ts';

/** A key of one hand with the finger on it. */
interface Fingered {
  readonly midi: number;
  /** null: left open */
  readonly finger: number | null;
}

/**
 * Two successive notes of one hand → the crossing on the way from the first into the second, or null.
 *
 * Outward is away from the body's middle: up for the right hand, down for the left. Going outward the thumb passes
 * under the finger that holds the last key; going inward a finger passes over the thumb. A hand that simply moves
 * (5 on G4, then 1 on E4 in broken triads) crosses nothing: its fingers keep the order of the keys.
 */
export function crossingBetween(from: Fingered, to: Fingered, hand: Hand): Crossing | null {
  if (from.midi === to.midi || from.finger === null || to.finger === null) return null;
  const direction = to.midi > from.midi ? 'up' : 'down';
  const outward = (hand === 'right') === (direction === 'up');
  if (outward && to.finger === 1 && from.finger > 1) return { hand, kind: 'thumb-under', direction };
  if (!outward && from.finger === 1 && to.finger > 1) return { hand, kind: 'over-thumb', direction };
  return null;
}

/** What a hand struck before and what it strikes now → the crossing on the way, if any: a chord is struck by the hand as a whole. */
export function crossingsInto(
  to: readonly Fingered[],
  from: readonly Fingered[],
  hand: Hand,
): readonly Crossing[] {
  if (to.length !== 1 || from.length !== 1) return [];
  const crossing = crossingBetween(from[0]!, to[0]!, hand);
  return crossing === null ? [] : [crossing];
}
