import { cellsOf, rowOf } from './types.ts';
import type { FingeringRow } from './types.ts';

/**
 * Tonic arpeggios, two octaves up; 1 is the thumb.
 *
 * Sources, as read: B, E, V, L are four published teachers' tables. Alternatives (left hand 3 or 4, another first
 * finger) are common practice and cross at the same notes. The ear cannot see fingers: a delay is looked for where the
 * hand must cross by this table.
 */
export const ARPEGGIO_FINGERINGS: readonly FingeringRow[] = [
  ...cellsOf(`
    C G F    123 123 5  542 142 1  B, E, L
    D A E B  123 123 5  532 132 1  B, L; left hand also 542
    F#       123 123 5  532 132 1  B, V
    Db       412 412 4  214 214 2  B, V, L; right hand also starts on 2
    Ab Eb    412 412 4  214 214 2  V, L; right hand also starts on 2
    Bb       212 412 4  321 321 3  E; left hand also 2 on top (memory)
  `).map((cells) => rowOf('major', cells)),
  ...cellsOf(`
    C F G     123 123 5  542 142 1  E; left hand also 532
    D E A B   123 123 5  542 142 1  E, L
    F# C# G#  412 412 4  214 214 2  V, L; right hand also starts on 2
    Eb        123 123 5  542 142 1  V, E, L
    Bb        231 231 2  321 321 3  L; left hand also 2 on top (memory)
  `).map((cells) => rowOf('minor', cells)),
];
