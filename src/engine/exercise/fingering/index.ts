import { Note } from 'tonal';
import type { Hand, MinorScale } from '../types.ts';
import { ARPEGGIO_FINGERINGS } from './arpeggios.ts';
import { MAJOR_SCALE_FINGERINGS, MINOR_SCALE_FINGERINGS } from './scales.ts';
import type { FingeringRow, TwoOctaves } from './types.ts';

export {
  CADENCE_BASS_FINGERINGS,
  CADENCE_FINGERINGS,
  FOUR_NOTE_FINGERINGS,
  PROGRESSION_FINGERINGS,
  TRIAD_FINGERINGS,
} from './chords.ts';
export type { CadenceChord, CadencePosition, ProgressionChord } from './chords.ts';

/** Fingers of the tonic arpeggio going up, lowest note first: 3 · octaves + 1 of them. */
export function arpeggioFingers(key: string, hand: Hand, octaves: number): readonly number[] {
  return overOctaves(rowFor(key, ARPEGGIO_FINGERINGS)[hand], octaves);
}

/** Fingers of a scale going up, lowest note first: 7 · octaves + 1 of them. `minorScale` null for a major key. */
export function scaleFingers(
  key: string,
  minorScale: MinorScale | null,
  hand: Hand,
  octaves: number,
): readonly number[] {
  const rows =
    minorScale === null
      ? MAJOR_SCALE_FINGERINGS
      : MINOR_SCALE_FINGERINGS.filter((row) => row.scales.includes(minorScale));
  return overOctaves(rowFor(key, rows)[hand], octaves);
}

/** The row of a key, or of the key that sounds the same: G♭ major is played as F♯ major. */
function rowFor(key: string, rows: readonly FingeringRow[]): FingeringRow {
  return rows.find((row) => row.keys.some((name) => soundTheSame(name, key)))!;
}

function soundTheSame(one: string, other: string): boolean {
  const [tonic, mode] = one.split(' ');
  const [otherTonic, otherMode] = other.split(' ');
  return mode === otherMode && Note.chroma(tonic!) === Note.chroma(otherTonic!);
}

function overOctaves(pattern: TwoOctaves, octaves: number): readonly number[] {
  const [first, second, top] = pattern.split(' ');
  return [...(first! + second!.repeat(octaves - 1) + top!)].map(Number);
}
