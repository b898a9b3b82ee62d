/** A4 of ISO 16:1975, in Hz; MIDI note 69 of the MIDI 1.0 specification. */
export const A4_HZ = 440;

/** Lowest and highest key of an 88-key piano as MIDI numbers: A0 and C8. */
export const LOWEST_KEY = 21;
export const HIGHEST_KEY = 108;

/** Whether an 88-key piano has a key of that MIDI number. */
export const isKey = (midi: number): boolean => midi >= LOWEST_KEY && midi <= HIGHEST_KEY;

/** Whether a key of the keyboard is a black one. */
export function isBlack(midi: number): boolean {
  return [1, 3, 6, 8, 10].includes(((midi % 12) + 12) % 12);
}

/** MIDI number (fractions allowed) → frequency in Hz in equal temperament, f(m) = 440 · 2^((m − 69)/12). */
export function midiToHz(midi: number): number {
  return A4_HZ * 2 ** ((midi - 69) / 12);
}

/** Frequency in Hz → MIDI number with its fraction (0.01 = one cent). */
export function hzToMidi(freqHz: number): number {
  return 69 + 12 * Math.log2(freqHz / A4_HZ);
}

/** Power ratio → dB; silence is floored at −120 dB so that no result is infinite. */
export function powerToDb(power: number): number {
  return 10 * Math.log10(Math.max(power, 1e-12));
}
