import type { MinorScale } from '../types.ts';
import { cellsOf, rowOf } from './types.ts';
import type { FingeringRow } from './types.ts';

/*
 * Where each row comes from. "Read" means that the published text was read for this table and agrees with the row.
 *
 * R  the reference list of github.com/mpg/pypiano-fingers: all major and harmonic minor scales, one octave as it
 *    repeats (its first finger is the one of the octaves above)
 * C  theconservatoryofmusic.org, on the major scales with flats, one octave up and down
 * M  musicteacherguide.com, on the natural and harmonic minor scales and six melodic ones, one octave up
 * T  thoughts.kyletycholiz.com, on the natural minor scales, two octaves up
 * P  a teacher's published pages on single melodic minor scales, up and down
 * "Memory" is common practice, from memory, not read. Two octaves are read in T only; the others are continued by
 * repeating their octave. Where sources begin on another finger the row says so; no crossing depends on it.
 */

/** Major scales, two octaves up; 1 is the thumb. */
export const MAJOR_SCALE_FINGERINGS: readonly FingeringRow[] = cellsOf(`
  C G D A E  1231234 1231234 5  5432132 1432132 1  R
  B          1231234 1231234 5  4321432 1321432 1  R; left 4 first: memory
  F#         2341231 2341231 2  4321321 4321321 4  R
  Db         2312341 2312341 2  3214321 3214321 3  R, C
  Ab         3412312 3412312 3  3214321 3214321 3  R, C; right also 2 first (memory)
  Eb         3123412 3123412 3  3214321 3214321 3  R, C; right also 2 first (memory)
  Bb         2123123 4123123 4  3214321 3214321 3  R, C; right 2 first: memory, 4 first in R and C
  F          1234123 1234123 4  5432132 1432132 1  R, C
`).map((cells) => rowOf('major', cells));

/** A row that holds for the minor scales it names; melodic means the way up, for the way down is natural. */
interface MinorScaleRow extends FingeringRow {
  readonly scales: readonly MinorScale[];
}

/** Minor scales, two octaves up; 1 is the thumb. Where the raised sixth and seventh move a thumb, the forms part. */
export const MINOR_SCALE_FINGERINGS: readonly MinorScaleRow[] = cellsOf(`
  natural harmonic melodic  A E D G C  1231234 1231234 5  5432132 1432132 1  R harmonic; M
  natural harmonic melodic  B          1231234 1231234 5  4321432 1321432 1  R harmonic; M and T natural; P melodic
  natural harmonic          F#         3412312 3412312 3  4321321 4321321 4  R harmonic; M
  melodic                   F#         2312341 2312341 2  4321321 4321321 4  P
  natural harmonic          C#         3412312 3412312 3  3214321 3214321 3  R and M harmonic; T natural (right 2 first in M)
  melodic                   C#         2312341 2312341 2  3214321 3214321 3  P
  natural                   G#         3412312 3412312 3  3213214 3213214 3  M right; left memory: the thumbs take the only two white keys
  harmonic melodic          G#         3412312 3412312 3  3214321 3214321 3  R harmonic; P melodic (right 2 first)
  natural harmonic melodic  Eb         3123412 3123412 3  2143213 2143213 2  R and M harmonic; T and M natural; melodic memory
  natural harmonic melodic  Bb         2123123 4123123 4  2132143 2132143 2  R harmonic; M natural (right 4 first in both, 2 first: memory); melodic memory
  natural harmonic melodic  F          1234123 1234123 4  5432132 1432132 1  R harmonic; M
`).map(([scales, ...cells]) => ({
  ...rowOf('minor', cells),
  scales: scales!.split(' ') as MinorScale[],
}));
