import { Note } from 'tonal';
import { PROGRESSION_FINGERINGS, TRIAD_FINGERINGS } from '../fingering/index.ts';
import type { ProgressionChord } from '../fingering/index.ts';
import { fingered } from './places.ts';
import type { Place } from './places.ts';
import type { Part } from './types.ts';

/** Root position, first and second inversion, root position an octave higher, as intervals above the tonic. */
export const TRIAD_POSITIONS = {
  major: [
    ['1P', '3M', '5P'],
    ['3M', '5P', '8P'],
    ['5P', '8P', '10M'],
    ['8P', '10M', '12P'],
  ],
  minor: [
    ['1P', '3m', '5P'],
    ['3m', '5P', '8P'],
    ['5P', '8P', '10m'],
    ['8P', '10m', '12P'],
  ],
} as const;

export const POSITION_NAMES = ['root position', 'first inversion', 'second inversion'] as const;

/** Up one octave through four positions, down through three: seven chords, the top one once. */
export const POSITION_ORDER = [0, 1, 2, 3, 2, 1, 0] as const;
export const TOP_POSITION = 3;

/**
 * Close position with common tones kept: the tonic stays below IV, and V7 without its fifth closes round the
 * dominant from the leading note. In C: CEG, CFA, BFG.
 */
const PROGRESSION_VOICINGS = {
  major: {
    tonic: ['1P', '3M', '5P'],
    subdominant: ['1P', '4P', '6M'],
    'dominant-seventh': ['-2m', '4P', '5P'],
  },
  minor: {
    tonic: ['1P', '3m', '5P'],
    subdominant: ['1P', '4P', '6m'],
    'dominant-seventh': ['-2m', '4P', '5P'],
  },
} as const;

const NUMERALS = {
  major: { tonic: 'I', subdominant: 'IV', 'dominant-seventh': 'V7' },
  minor: { tonic: 'i', subdominant: 'iv', 'dominant-seventh': 'V7' },
} as const;

const PROGRESSION_ORDER: readonly ProgressionChord[] = [
  'tonic',
  'subdominant',
  'tonic',
  'dominant-seventh',
  'tonic',
];

/** The tonic triad and its inversions, solid, up and down one octave from `start`: seven chords. */
export function triadPlaces({ key: { mode }, hand, start }: Part): readonly Place[] {
  return POSITION_ORDER.map((position, index) => ({
    keys: fingered(
      above(start, TRIAD_POSITIONS[mode][position]),
      TRIAD_FINGERINGS[hand][position % POSITION_NAMES.length]!,
    ),
    turn: index === TOP_POSITION,
    label: POSITION_NAMES[position % POSITION_NAMES.length]!,
  }));
}

/**
 * Seven positions note by note: the four on the way up from the lowest note to the highest, the three on the way down from the
 * highest to the lowest. Each position is named at its first note.
 */
export function broken(positions: readonly Place[]): readonly Place[] {
  return positions.flatMap(({ keys, turn, label }, index) => {
    const order = index <= TOP_POSITION ? keys : [...keys].reverse();
    return order.map((key, at) => ({
      keys: [key],
      turn: turn && at === order.length - 1,
      ...(at === 0 && label !== undefined && { label }),
    }));
  });
}

/** I-IV-I-V7-I, or i-iv-i-V7-i with the raised leading note, in close position on `start`. */
export function progressionPlaces({ key: { mode }, hand, start }: Part): readonly Place[] {
  return PROGRESSION_ORDER.map((chord) => ({
    keys: fingered(above(start, PROGRESSION_VOICINGS[mode][chord]), PROGRESSION_FINGERINGS[hand][chord]),
    turn: false,
    label: NUMERALS[mode][chord],
  }));
}

function above(start: string, intervals: readonly string[]): readonly string[] {
  return intervals.map((interval) => Note.transpose(start, interval));
}
