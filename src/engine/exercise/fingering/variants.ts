import type { Hand, MinorScale, Principle } from '../types.ts';
import { cellsOf, keysOf } from './types.ts';
import type { TwoOctaves } from './types.ts';

/** Other fingers than the usual ones, for some keys and one hand. */
export interface VariantRow {
  readonly hand: Hand;
  readonly principle: Principle;
  readonly keys: readonly string[];
  /** of scales in minor keys: those that it is for; absent: all three */
  readonly scales?: readonly MinorScale[];
  readonly fingers: TwoOctaves;
  /** null: common practice, no source */
  readonly source: string | null;
}

/**
 * Hand, principle, tonics of major keys and of minor ones (– for none), fingers, source, and of minor scales those that it is for. What is
 * read as an alternative names its table by the letters of `scales.ts` and `arpeggios.ts`; of – nobody was found who prints it, though it
 * is taught, from memory. As in C: the thumb on the tonic, whatever its colour, in keys in which it lies elsewhere by the usual fingers.
 * Thumbs together: the left one falls on the keys of the right one, B♭ C F, E♭ F C, A♭ C F, C F.
 */
export const SCALE_VARIANTS: readonly VariantRow[] = variants(`
  right  second-first     Ab                 –                  2312312 3412312 3  –
  right  second-first     Eb                 –                  2123412 3123412 3  –
  right  second-first     –                  Eb                 2123412 3123412 3  –
  right  second-first     –                  F#                 2312312 3412312 3  –          natural harmonic
  right  second-first     –                  C#                 2312312 3412312 3  M natural  natural harmonic
  right  second-first     –                  G#                 2312312 3412312 3  P melodic
  right  fourth-first     Bb                 –                  4123123 4123123 4  R, C
  right  fourth-first     –                  Bb                 4123123 4123123 4  R, M
  left   thumbs-together  Bb                 –                  2132143 2132143 2  –
  left   thumbs-together  Eb                 –                  2143213 2143213 2  –
  left   thumbs-together  Ab                 –                  3213214 3213214 3  –
  left   thumbs-together  –                  C G                4321432 1321432 1  –
  right  as-in-c          F# Db Ab Eb Bb F   F# C# G# Eb Bb F   1231234 1231234 5  –
  left   as-in-c          B F# Db Ab Eb Bb   B F# C# G# Eb Bb   5432132 1432132 1  –
`);

export const ARPEGGIO_VARIANTS: readonly VariantRow[] = variants(`
  right  second-first     Db Ab Eb     F# C# G#      212 412 4  V, L
  right  fourth-first     Bb           –             412 412 4  –
  left   fourth-finger    D A E B      –             542 142 1  B, L
  left   fourth-finger    F#           –             542 142 1  –
  left   third-finger     –            C F G         532 132 1  E
  left   third-finger     C G F        D E A B Eb    532 132 1  –
  left   second-on-top    Bb           Bb            321 321 2  –
  right  as-in-c          Db Ab Eb Bb  F# C# G# Bb   123 123 5  –
  left   as-in-c          Db Ab Eb Bb  F# C# G# Bb   542 142 1  –
`);

function variants(table: string): readonly VariantRow[] {
  return cellsOf(table).map(([hand, principle, major, minor, fingers, source, scales]) => ({
    hand: hand as Hand,
    principle: principle as Principle,
    keys: [
      ...(major === '–' ? [] : keysOf(major!, 'major')),
      ...(minor === '–' ? [] : keysOf(minor!, 'minor')),
    ],
    fingers: fingers as TwoOctaves,
    source: source === '–' ? null : source!,
    ...(scales !== undefined && { scales: scales.split(' ') as MinorScale[] }),
  }));
}
