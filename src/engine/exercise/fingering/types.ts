/**
 * Fingers for two octaves going up, lowest note first, a space between the octaves and before the top note:
 * "123 123 5". From these three groups every length follows: the first octave, the second as often as needed, the top.
 */
export type TwoOctaves = `${number} ${number} ${number}`;

/** One row of a table of fingerings: the same fingers in several keys. */
export interface FingeringRow {
  readonly keys: readonly string[];
  readonly right: TwoOctaves;
  readonly left: TwoOctaves;
  readonly source: string;
}
