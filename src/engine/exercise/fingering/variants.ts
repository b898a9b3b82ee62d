import type { Hand, MinorScale, Principle } from '../types.ts';
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

/** Nobody was found who prints it, though it is taught. From memory. */
const NO_SOURCE = null;
/** Both hands of C major. */
const AS_IN_C = {
  scale: { right: '1231234 1231234 5', left: '5432132 1432132 1' },
  arpeggio: { right: '123 123 5', left: '542 142 1' },
} as const;

/** What is read as an alternative names its table by the letters of `scales.ts` and `arpeggios.ts`. */
export const SCALE_VARIANTS: readonly VariantRow[] = [
  ...beginning('right', 'second-first', NO_SOURCE, {
    'Ab major': '2312312 3412312 3',
    'Eb major': '2123412 3123412 3',
    'Eb minor': '2123412 3123412 3',
  }),
  {
    hand: 'right',
    principle: 'second-first',
    keys: ['F# minor'],
    scales: ['natural', 'harmonic'],
    fingers: '2312312 3412312 3',
    source: NO_SOURCE,
  },
  {
    hand: 'right',
    principle: 'second-first',
    keys: ['C# minor'],
    scales: ['natural', 'harmonic'],
    fingers: '2312312 3412312 3',
    source: 'M natural',
  },
  {
    hand: 'right',
    principle: 'second-first',
    keys: ['G# minor'],
    fingers: '2312312 3412312 3',
    source: 'P melodic',
  },
  ...beginning('right', 'fourth-first', 'R, C', { 'Bb major': '4123123 4123123 4' }),
  ...beginning('right', 'fourth-first', 'R, M', { 'Bb minor': '4123123 4123123 4' }),
  // The left thumb falls on the keys of the right one: B♭ C F, E♭ F C, A♭ C F, C F.
  ...beginning('left', 'thumbs-together', NO_SOURCE, {
    'Bb major': '2132143 2132143 2',
    'Eb major': '2143213 2143213 2',
    'Ab major': '3213214 3213214 3',
    'C minor': '4321432 1321432 1',
    'G minor': '4321432 1321432 1',
  }),
  ...likeC('scale', {
    right: ['F#', 'Db', 'Ab', 'Eb', 'Bb', 'F']
      .map(major)
      .concat(['F#', 'C#', 'G#', 'Eb', 'Bb', 'F'].map(minor)),
    left: ['B', 'F#', 'Db', 'Ab', 'Eb', 'Bb']
      .map(major)
      .concat(['B', 'F#', 'C#', 'G#', 'Eb', 'Bb'].map(minor)),
  }),
];

export const ARPEGGIO_VARIANTS: readonly VariantRow[] = [
  {
    hand: 'right',
    principle: 'second-first',
    keys: ['Db major', 'Ab major', 'Eb major', 'F# minor', 'C# minor', 'G# minor'],
    fingers: '212 412 4',
    source: 'V, L',
  },
  ...beginning('right', 'fourth-first', NO_SOURCE, { 'Bb major': '412 412 4' }),
  {
    hand: 'left',
    principle: 'fourth-finger',
    keys: ['D major', 'A major', 'E major', 'B major'],
    fingers: '542 142 1',
    source: 'B, L',
  },
  ...beginning('left', 'fourth-finger', NO_SOURCE, { 'F# major': '542 142 1' }),
  {
    hand: 'left',
    principle: 'third-finger',
    keys: ['C minor', 'F minor', 'G minor'],
    fingers: '532 132 1',
    source: 'E',
  },
  {
    hand: 'left',
    principle: 'third-finger',
    keys: ['C major', 'G major', 'F major', 'D minor', 'E minor', 'A minor', 'B minor', 'Eb minor'],
    fingers: '532 132 1',
    source: NO_SOURCE,
  },
  ...beginning('left', 'second-on-top', NO_SOURCE, {
    'Bb major': '321 321 2',
    'Bb minor': '321 321 2',
  }),
  ...likeC('arpeggio', {
    right: ['Db', 'Ab', 'Eb', 'Bb'].map(major).concat(['F#', 'C#', 'G#', 'Bb'].map(minor)),
    left: ['Db', 'Ab', 'Eb', 'Bb'].map(major).concat(['F#', 'C#', 'G#', 'Bb'].map(minor)),
  }),
];

/** The same principle with other fingers in each key. */
function beginning(
  hand: Hand,
  principle: Principle,
  source: string | null,
  keys: Readonly<Record<string, TwoOctaves>>,
): readonly VariantRow[] {
  return Object.entries(keys).map(([key, fingers]) => ({ hand, principle, keys: [key], fingers, source }));
}

/** The thumb on the tonic, whatever its colour: keys in which it lies elsewhere by the usual fingers. */
function likeC(
  form: keyof typeof AS_IN_C,
  keys: Readonly<Record<Hand, readonly string[]>>,
): readonly VariantRow[] {
  return (['right', 'left'] as const).map((hand) => ({
    hand,
    principle: 'as-in-c',
    keys: keys[hand],
    fingers: AS_IN_C[form][hand],
    source: NO_SOURCE,
  }));
}

function major(tonic: string): string {
  return `${tonic} major`;
}

function minor(tonic: string): string {
  return `${tonic} minor`;
}
