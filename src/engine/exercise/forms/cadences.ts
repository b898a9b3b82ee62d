import { Note } from 'tonal';
import {
  CADENCE_BASS_FINGERINGS,
  CADENCE_FINGERINGS,
  PROGRESSION_LEFT_FINGERINGS,
} from '../fingering/index.ts';
import type { CadenceChord, CadencePosition } from '../fingering/index.ts';
import type { Mode } from '../types.ts';
import { fingered } from './places.ts';
import type { Place } from './places.ts';
import type { FormDefinition, Part } from './types.ts';

/**
 * The right hand's chords, as intervals above the tonic, by what lies on top of the first: close position, common tones kept, the
 * leading note raised in minor. The V7 has no fifth; in the second degree's chord over its third (ii6) one note of IV goes up.
 */
const VOICINGS: Readonly<Record<CadencePosition, Readonly<Record<CadenceChord, readonly string[]>>>> = {
  fifth: {
    tonic: ['1P', '3', '5P'],
    subdominant: ['1P', '4P', '6'],
    second: ['2M', '4P', '6'],
    dominant: ['-2m', '2M', '5P'],
    'dominant-seventh': ['-2m', '4P', '5P'],
  },
  octave: {
    tonic: ['3', '5P', '8P'],
    subdominant: ['4P', '6', '8P'],
    second: ['4P', '6', '9M'],
    dominant: ['2M', '5P', '7M'],
    'dominant-seventh': ['4P', '5P', '7M'],
  },
  third: {
    tonic: ['-4P', '1P', '3'],
    subdominant: ['-3', '1P', '4P'],
    second: ['-3', '2M', '4P'],
    dominant: ['-4P', '-2m', '2M'],
    'dominant-seventh': ['-4P', '-2m', '4P'],
  },
};

/** Intervals that go with the mode. */
const IN_MODE: Readonly<Record<Mode, Readonly<Record<string, string>>>> = {
  major: { 3: '3M', 6: '6M', '-3': '-3m' },
  minor: { 3: '3m', 6: '6m', '-3': '-3M' },
};

/** The bass, below its tonic. */
const BASS: Readonly<Record<CadenceChord, string>> = {
  tonic: '1P',
  subdominant: '-5P',
  second: '-5P',
  dominant: '-4P',
  'dominant-seventh': '-4P',
};

const NUMERALS: Readonly<Record<Mode, Readonly<Record<CadenceChord, string>>>> = {
  major: { tonic: 'I', subdominant: 'IV', second: 'ii6', dominant: 'V', 'dominant-seventh': 'V7' },
  minor: { tonic: 'i', subdominant: 'iv', second: 'ii°6', dominant: 'V', 'dominant-seventh': 'V7' },
};

/** I–IV–I–V–I, the same with V7, and I–IV–ii6–V7–I. */
const CHORDS = {
  cadence: ['tonic', 'subdominant', 'tonic', 'dominant', 'tonic'],
  'cadence-seventh': ['tonic', 'subdominant', 'tonic', 'dominant-seventh', 'tonic'],
  'cadence-second': ['tonic', 'subdominant', 'second', 'dominant-seventh', 'tonic'],
} as const satisfies Readonly<Record<string, readonly CadenceChord[]>>;
type CadenceKind = keyof typeof CHORDS;

/** Cadences of a kind with the bass in the left hand and the chords in the right, by what lies on top of the first chord. */
export function cadences<Kind extends CadenceKind>(
  kind: Kind,
  definition: Omit<FormDefinition, 'places'>,
): Readonly<Record<`${Kind}-${CadencePosition}`, FormDefinition>> {
  const at = (position: CadencePosition): FormDefinition => ({
    ...definition,
    places: (part) => cadencePlaces(part, CHORDS[kind], position),
  });
  return {
    [`${kind}-fifth`]: at('fifth'),
    [`${kind}-octave`]: at('octave'),
    [`${kind}-third`]: at('third'),
  } as Readonly<Record<`${Kind}-${CadencePosition}`, FormDefinition>>;
}

function cadencePlaces(
  { key: { mode }, hand, start }: Part,
  chords: readonly CadenceChord[],
  position: CadencePosition,
): readonly Place[] {
  return chords.map((chord) =>
    hand === 'right'
      ? chordOn(start, mode, chord, VOICINGS[position][chord], CADENCE_FINGERINGS[position][chord])
      : chordOn(start, mode, chord, [BASS[chord]], [CADENCE_BASS_FINGERINGS[chord]]),
  );
}

/** I–IV–I–V7–I in close position by either hand: the tonic stays below IV, and V7 closes round the dominant. In C: CEG, CFA, BFG. */
export function progressionPlaces({ key: { mode }, hand, start }: Part): readonly Place[] {
  const fingers = hand === 'right' ? CADENCE_FINGERINGS.fifth : PROGRESSION_LEFT_FINGERINGS;
  return CHORDS['cadence-seventh'].map((chord) =>
    chordOn(start, mode, chord, VOICINGS.fifth[chord], fingers[chord]),
  );
}

function chordOn(
  start: string,
  mode: Mode,
  chord: CadenceChord,
  intervals: readonly string[],
  fingers: readonly number[],
): Place {
  const names = intervals.map((interval) => Note.transpose(start, IN_MODE[mode][interval] ?? interval));
  return { keys: fingered(names, fingers), turn: false, label: NUMERALS[mode][chord] };
}
