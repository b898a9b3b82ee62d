import { typicalStiffness } from '../../listen/partials/stiffness.ts';

/** Partials of the string itself. */
const OWN = [1, 2, 3, 4, 5, 6, 7, 8];
/** Where strings an octave, a twelfth and two octaves below have partials that this one has not. */
const BELOW = [1 / 2, 3 / 2, 5 / 2, 7 / 2, 1 / 3, 2 / 3, 4 / 3, 5 / 3, 3 / 4, 5 / 4];
/** Partials of the keys beside it. */
const BESIDE = [1, 2, 3].flatMap((partial) => [partial * 2 ** (-1 / 12), partial * 2 ** (1 / 12)]);
/** A longer string is less stiff for its partials. */
const STIFFNESS_BELOW = 0.75;

export const STRIPS = OWN.length + BELOW.length + BESIDE.length;

/**
 * A key and its distance from equal temperament (cents) → the frequencies at which it is looked at, Hz: its own partials, those
 * of strings below it, those of its neighbours. Partials of a stiff string: n · f0 · sqrt(1 + B n²) (Fletcher 1964; from
 * memory), with the stiffness that a key has by design.
 */
export function stripsOf(midi: number, cents: number): readonly number[] {
  const first = 440 * 2 ** ((midi - 69 + cents / 100) / 12);
  const stiffness = typicalStiffness(midi);
  const stretched = (partial: number, share: number): number =>
    first * partial * Math.sqrt(1 + share * stiffness * partial * partial);
  return [
    ...OWN.map((partial) => stretched(partial, 1)),
    ...BELOW.map((partial) => stretched(partial, STIFFNESS_BELOW)),
    ...BESIDE.map((partial) => first * partial),
  ];
}
