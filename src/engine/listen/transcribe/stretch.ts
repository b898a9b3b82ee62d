/**
 * Key → how far a tuned piano lies from equal temperament there, cents (Railsback 1938; from memory): a few cents in the
 * middle, −30 in the bottom octave, +30 in the top one. Half of that is assumed: home pianos are stretched less.
 */
export function stretchCents(midi: number): number {
  const below = Math.max(0, 48 - midi) / 27;
  const above = Math.max(0, midi - 72) / 36;
  return 20 * above ** 2 - 15 * below ** 2;
}
