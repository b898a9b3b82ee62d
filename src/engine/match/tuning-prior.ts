/**
 * How pianos are tuned, as densities over cents against A4 = 440 Hz. Three kinds, from memory and common practice, no source:
 * kept in tune (most of them at 440 to 443 Hz, 0 to +12, a little sharp in a damp summer); neglected, 10 to 90 flat (a string
 * that is let alone goes flat, never 30 sharp); and anything from 100 flat to 60 sharp (an old pitch, a recording at another speed).
 */
function density(cents: number): number {
  const inTune = Math.exp(-0.5 * ((cents - 3) / 8) ** 2) / (8 * Math.sqrt(2 * Math.PI));
  const neglected = cents > -93 && cents < -10 ? 1 / 83 : 0;
  const anything = cents > -100 && cents < 60 ? 1 / 160 : 0;
  return 0.74 * inTune + 0.21 * neglected + 0.05 * anything;
}

/** The semitones by which a listener most likely misread the piano, and the chance that it is so. */
export interface Misreading {
  readonly semitones: number;
  readonly chance: number;
  /** what it is if not that */
  readonly otherwise: number;
}

/**
 * The piano's tuning as it was read without knowing what was played → by how many semitones every key was misread. A piano 80 cents
 * flat and one 20 cents sharp sound alike but for the keys; what is known of how pianos are tuned decides. Where the piano's own
 * tuning is known (`pianoCents`, good to half a semitone), that decides.
 */
export function misreading(readCents: number, pianoCents: number | null = null): Misreading {
  if (pianoCents !== null) {
    const semitones = Math.round((readCents - pianoCents) / 100);
    return { semitones, chance: 1, otherwise: 0 };
  }
  const asRead = density(readCents);
  const low = density(readCents - 100);
  const high = density(readCents + 100);
  const all = asRead + low + high;
  const otherwise = low > high ? 1 : -1;
  if (asRead >= Math.max(low, high)) return { semitones: 0, chance: asRead / all, otherwise };
  return { semitones: otherwise, chance: Math.max(low, high) / all, otherwise: 0 };
}
