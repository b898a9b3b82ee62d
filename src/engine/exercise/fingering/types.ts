import type { Mode } from '../types.ts';

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

/** A table as it is printed → its rows: lines of cells, parted by two spaces and more. */
export const cellsOf = (table: string): readonly (readonly string[])[] =>
  table
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/ {2,}/));

/** Tonics, right hand, left hand, source → the row of keys of one mode. */
export const rowOf = (mode: Mode, [tonics, right, left, source]: readonly string[]): FingeringRow => ({
  keys: keysOf(tonics!, mode),
  right: right as TwoOctaves,
  left: left as TwoOctaves,
  source: source!,
});

/** "C G D", major → their keys. */
export const keysOf = (tonics: string, mode: Mode): readonly string[] =>
  tonics.split(' ').map((tonic) => `${tonic} ${mode}`);
