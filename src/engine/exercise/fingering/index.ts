import { Note } from 'tonal';
import type { Hand, MinorScale, Principle } from '../types.ts';
import { ARPEGGIO_FINGERINGS } from './arpeggios.ts';
import { MAJOR_SCALE_FINGERINGS, MINOR_SCALE_FINGERINGS } from './scales.ts';
import type { FingeringRow, TwoOctaves } from './types.ts';
import { ARPEGGIO_VARIANTS, SCALE_VARIANTS } from './variants.ts';
import type { VariantRow } from './variants.ts';

export {
  CADENCE_BASS_FINGERINGS,
  CADENCE_FINGERINGS,
  FOUR_NOTE_FINGERINGS,
  PROGRESSION_LEFT_FINGERINGS,
  TRIAD_FINGERINGS,
} from './chords.ts';
export type { CadenceChord, CadencePosition, InversionFingers } from './chords.ts';
export { DOUBLE_NOTE_FINGERINGS, doubleFingers } from './double-notes.ts';
export type { FingerPair } from './double-notes.ts';

/** Whose fingers, in which key. */
export interface OfHand {
  readonly key: string;
  readonly hand: Hand;
  /** of a scale in a minor key; null: in a major key, or of no scale */
  readonly minorScale: MinorScale | null;
  /** null: the usual one */
  readonly principle: Principle | null;
}

/** Fingers of the tonic arpeggio going up, lowest note first: 3 · octaves + 1 of them; the usual ones where the principle has none. */
export function arpeggioFingers(of: OfHand, octaves: number): readonly number[] {
  const usual = rowFor(of.key, ARPEGGIO_FINGERINGS)[of.hand];
  return overOctaves(variantOf(of, ARPEGGIO_VARIANTS)?.fingers ?? usual, octaves);
}

/** Fingers of a scale going up, lowest note first: 7 · octaves + 1 of them; the usual ones where the principle has none. */
export function scaleFingers(of: OfHand, octaves: number): readonly number[] {
  const { minorScale } = of;
  const rows =
    minorScale === null
      ? MAJOR_SCALE_FINGERINGS
      : MINOR_SCALE_FINGERINGS.filter((row) => row.scales.includes(minorScale));
  const usual = rowFor(of.key, rows)[of.hand];
  return overOctaves(variantOf(of, SCALE_VARIANTS)?.fingers ?? usual, octaves);
}

/** A principle with who prints it; null: common practice, no source. */
export interface Variant {
  readonly principle: Principle;
  readonly source: string | null;
}

/** The principles that a hand can choose from beside the usual one. */
export function variantsOf(of: 'scale' | 'arpeggio', hand: Omit<OfHand, 'principle'>): readonly Variant[] {
  return (of === 'scale' ? SCALE_VARIANTS : ARPEGGIO_VARIANTS).filter((row) => isFor(row, hand));
}

const variantOf = (of: OfHand, rows: readonly VariantRow[]): VariantRow | undefined =>
  rows.find((row) => row.principle === of.principle && isFor(row, of));

const isFor = (
  { hand, keys, scales }: VariantRow,
  { key, hand: own, minorScale }: Omit<OfHand, 'principle'>,
): boolean =>
  hand === own &&
  keys.some((name) => soundOf(name) === soundOf(key)) &&
  (scales === undefined || minorScale === null || scales.includes(minorScale));

/** The row of a key, or of the key that sounds the same: G♭ major is played as F♯ major. */
function rowFor(key: string, rows: readonly FingeringRow[]): FingeringRow {
  const sounding = soundOf(key);
  return rows.find(({ keys }) => keys.includes(key) || keys.some((name) => soundOf(name) === sounding))!;
}

const sounds = new Map<string, string>();

/** A key → its mode and where its tonic lies in the octave, however it is written; asked for very often. */
function soundOf(key: string): string {
  const known = sounds.get(key);
  if (known !== undefined) return known;
  const [tonic, mode] = key.split(' ');
  const sound = `${mode} ${Note.chroma(tonic!)}`;
  sounds.set(key, sound);
  return sound;
}

function overOctaves(pattern: TwoOctaves, octaves: number): readonly number[] {
  const [first, second, top] = pattern.split(' ');
  return [...(first! + second!.repeat(octaves - 1) + top!)].map(Number);
}
