import { Note } from 'tonal';
import { keyFacts } from './keys.ts';

/** Places on a staff: lines and spaces, counted by letters from C0 on, whatever the clef. */
const LETTERS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const;

/** "G#4" → 68; null: it is no note with an octave. */
export const midiOf = (name: string): number | null => Note.midi(name);

/** A place → the note of the key that stands there, e.g. "F#4" in D major. */
export function nameAt(key: string, place: number): string {
  const letter = LETTERS[((place % 7) + 7) % 7]!;
  const inKey = keyFacts(key).scale.find((name) => name.startsWith(letter)) ?? letter;
  return `${inKey}${Math.floor(place / 7)}`;
}

/** A note with its octave → the place at which it stands. */
export function placeOf(name: string): number {
  const { letter, oct } = Note.get(name);
  return 7 * (oct ?? 4) + LETTERS.indexOf(letter as (typeof LETTERS)[number]);
}

/** A semitone up or down on the same place; null: that takes more than one sign. */
export function withSign(name: string, by: 1 | -1): string | null {
  const { letter, alt, oct } = Note.get(name);
  const sign = (alt ?? 0) + by;
  return Math.abs(sign) > 1 ? null : `${letter}${sign > 0 ? '#' : sign < 0 ? 'b' : ''}${oct}`;
}
