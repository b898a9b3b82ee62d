import type { MinorScale } from '../types.ts';
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
export const MAJOR_SCALE_FINGERINGS: readonly FingeringRow[] = [
  {
    keys: ['C major', 'G major', 'D major', 'A major', 'E major'],
    right: '1231234 1231234 5',
    left: '5432132 1432132 1',
    source: 'R',
  },
  {
    keys: ['B major'],
    right: '1231234 1231234 5',
    left: '4321432 1321432 1',
    source: 'R; left 4 first: memory',
  },
  { keys: ['F# major'], right: '2341231 2341231 2', left: '4321321 4321321 4', source: 'R' },
  { keys: ['Db major'], right: '2312341 2312341 2', left: '3214321 3214321 3', source: 'R, C' },
  {
    keys: ['Ab major'],
    right: '3412312 3412312 3',
    left: '3214321 3214321 3',
    source: 'R, C; right also 2 first (memory)',
  },
  {
    keys: ['Eb major'],
    right: '3123412 3123412 3',
    left: '3214321 3214321 3',
    source: 'R, C; right also 2 first (memory)',
  },
  {
    keys: ['Bb major'],
    right: '2123123 4123123 4',
    left: '3214321 3214321 3',
    source: 'R, C; right 2 first: memory, 4 first in R and C',
  },
  { keys: ['F major'], right: '1234123 1234123 4', left: '5432132 1432132 1', source: 'R, C' },
];

/** A row that holds for the minor scales it names; melodic means the way up, for the way down is natural. */
export interface MinorScaleRow extends FingeringRow {
  readonly scales: readonly MinorScale[];
}

const EVERY_FORM: readonly MinorScale[] = ['natural', 'harmonic', 'melodic'];

/** Minor scales, two octaves up; 1 is the thumb. Where the raised sixth and seventh move a thumb, the forms part. */
export const MINOR_SCALE_FINGERINGS: readonly MinorScaleRow[] = [
  {
    keys: ['A minor', 'E minor', 'D minor', 'G minor', 'C minor'],
    scales: EVERY_FORM,
    right: '1231234 1231234 5',
    left: '5432132 1432132 1',
    source: 'R harmonic; M',
  },
  {
    keys: ['B minor'],
    scales: EVERY_FORM,
    right: '1231234 1231234 5',
    left: '4321432 1321432 1',
    source: 'R harmonic; M and T natural; P melodic',
  },
  {
    keys: ['F# minor'],
    scales: ['natural', 'harmonic'],
    right: '3412312 3412312 3',
    left: '4321321 4321321 4',
    source: 'R harmonic; M',
  },
  {
    keys: ['F# minor'],
    scales: ['melodic'],
    right: '2312341 2312341 2',
    left: '4321321 4321321 4',
    source: 'P',
  },
  {
    keys: ['C# minor'],
    scales: ['natural', 'harmonic'],
    right: '3412312 3412312 3',
    left: '3214321 3214321 3',
    source: 'R and M harmonic; T natural (right 2 first in M)',
  },
  {
    keys: ['C# minor'],
    scales: ['melodic'],
    right: '2312341 2312341 2',
    left: '3214321 3214321 3',
    source: 'P',
  },
  {
    keys: ['G# minor'],
    scales: ['natural'],
    right: '3412312 3412312 3',
    left: '3213214 3213214 3',
    source: 'M right; left memory: the thumbs take the only two white keys',
  },
  {
    keys: ['G# minor'],
    scales: ['harmonic', 'melodic'],
    right: '3412312 3412312 3',
    left: '3214321 3214321 3',
    source: 'R harmonic; P melodic (right 2 first)',
  },
  {
    keys: ['Eb minor'],
    scales: EVERY_FORM,
    right: '3123412 3123412 3',
    left: '2143213 2143213 2',
    source: 'R and M harmonic; T and M natural; melodic memory',
  },
  {
    keys: ['Bb minor'],
    scales: EVERY_FORM,
    right: '2123123 4123123 4',
    left: '2132143 2132143 2',
    source: 'R harmonic; M natural (right 4 first in both, 2 first: memory); melodic memory',
  },
  {
    keys: ['F minor'],
    scales: EVERY_FORM,
    right: '1234123 1234123 4',
    left: '5432132 1432132 1',
    source: 'R harmonic; M',
  },
];
