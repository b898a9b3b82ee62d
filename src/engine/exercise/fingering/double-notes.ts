import { Note } from 'tonal';
import { isBlack } from '../../base/units.ts';
import type { Hand } from '../types.ts';

/** Fingers of two keys struck by one hand, the lower key first. */
export type FingerPair = readonly [number, number];

/**
 * The right hand's positions of an octave going up, and so the left hand's going down: in thirds one of four and one of three, in
 * sixths two pairs and one of three. From memory, common practice, no source; schools differ, and small hands take other fingers.
 */
export const DOUBLE_NOTE_FINGERINGS = {
  thirds: [
    [1, 2],
    [1, 3],
    [2, 4],
    [3, 5],
    [1, 3],
    [2, 4],
    [3, 5],
  ],
  sixths: [
    [1, 4],
    [2, 5],
    [1, 4],
    [2, 5],
    [1, 3],
    [1, 4],
    [2, 5],
  ],
} as const satisfies Readonly<Record<string, readonly FingerPair[]>>;

/** A thumb on a black key is worse than a little finger there. */
const THUMB_ON_BLACK = 2;
const FIFTH_ON_BLACK = 1;

/**
 * Pairs of an octave going up, lower name first → their fingers, a pair each: the positions begin on that degree on which fewest thumbs
 * and little fingers fall on black keys, the lowest of them where several do. Common practice, no source.
 */
export function doubleFingers(
  pairs: readonly (readonly [string, string])[],
  positions: readonly FingerPair[],
  hand: Hand,
): readonly FingerPair[] {
  const from = (start: number): readonly FingerPair[] =>
    pairs.map((_, degree) => fingersAt(positions, hand, degree - start));
  const ways = pairs.map((_, start) => from(start));
  return ways.reduce((best, way) => (blacksUnder(way, pairs) < blacksUnder(best, pairs) ? way : best));
}

function fingersAt(positions: readonly FingerPair[], hand: Hand, at: number): FingerPair {
  const count = positions.length;
  const own = hand === 'right' ? at : -at;
  const [low, high] = positions[((own % count) + count) % count]!;
  return hand === 'right' ? [low, high] : [high, low];
}

function blacksUnder(fingers: readonly FingerPair[], pairs: readonly (readonly [string, string])[]): number {
  const costs = { 1: THUMB_ON_BLACK, 5: FIFTH_ON_BLACK } as Readonly<Record<number, number>>;
  return pairs
    .flatMap((pair, at) => pair.map((name, key) => ({ name, finger: fingers[at]![key]! })))
    .reduce((sum, { name, finger }) => sum + (isBlack(Note.midi(name)!) ? (costs[finger] ?? 0) : 0), 0);
}
