/** Probability, 0..1, of log odds (natural). */
export function probabilityOf(logOdds: number): number {
  return 1 / (1 + Math.exp(-logOdds));
}

/** Log odds (natural) of a probability, 0..1; infinite at its ends. */
export function logOddsOf(probability: number): number {
  return Math.log(probability / (1 - probability));
}
