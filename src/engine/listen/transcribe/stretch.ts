/** the middle of the keyboard, where a tuner begins, and the distance from it to either end, semitones */
const MIDDLE = 66;
const REACH = 43.5;
/** half of what the textbook curve reaches at the ends, cents */
const HALF_CENTS = 15;

/**
 * Key → how far a piano may be expected to lie from equal temperament there, cents: half of a smooth odd curve through −30 at
 * the bottom, 0 in the middle and +30 at the top (Railsback 1938; figures from memory). Pianos lie anywhere between none of
 * it and all of it, so half keeps the error of either least.
 */
export function stretchCents(midi: number): number {
  return HALF_CENTS * ((midi - MIDDLE) / REACH) ** 3;
}
