import type { Hand } from '../types.ts';

/** Fingers of a three-note chord, lowest note first. */
type ChordFingers = readonly [number, number, number];

/** Of each hand, lowest note first: root position, first and second inversion. */
export type InversionFingers = Readonly<Record<Hand, readonly (readonly number[])[]>>;

/**
 * Triads in root position, first and second inversion.
 * Common practice, as in the tables read for the arpeggios; the same in every key.
 */
export const TRIAD_FINGERINGS: InversionFingers = {
  right: [
    [1, 3, 5],
    [1, 2, 5],
    [1, 3, 5],
  ],
  left: [
    [5, 3, 1],
    [5, 3, 1],
    [5, 2, 1],
  ],
};

/**
 * Triads in root position, first and second inversion with the lowest note doubled on top. From memory, common practice, no source;
 * the same in every key. In the left hand's root position books also have 3 for 4, on a black key above all.
 */
export const FOUR_NOTE_FINGERINGS: InversionFingers = {
  right: [
    [1, 2, 3, 5],
    [1, 2, 4, 5],
    [1, 2, 4, 5],
  ],
  left: [
    [5, 4, 2, 1],
    [5, 4, 2, 1],
    [5, 3, 2, 1],
  ],
};

/** The chords of a cadence with its bass in the left hand. */
export type CadenceChord = 'tonic' | 'subdominant' | 'second' | 'dominant' | 'dominant-seventh';
/** What lies on top of its first chord. */
export type CadencePosition = 'fifth' | 'octave' | 'third';

/** The right hand's fingers; from memory, common practice, no source. The same in every key. */
export const CADENCE_FINGERINGS: Readonly<
  Record<CadencePosition, Readonly<Record<CadenceChord, ChordFingers>>>
> = {
  fifth: {
    tonic: [1, 3, 5],
    subdominant: [1, 3, 5],
    second: [1, 3, 5],
    dominant: [1, 2, 5],
    'dominant-seventh': [1, 4, 5],
  },
  octave: {
    tonic: [1, 2, 5],
    subdominant: [1, 3, 5],
    second: [1, 2, 5],
    dominant: [1, 3, 5],
    'dominant-seventh': [1, 2, 4],
  },
  third: {
    tonic: [1, 3, 5],
    subdominant: [1, 2, 5],
    second: [1, 3, 5],
    dominant: [1, 3, 5],
    'dominant-seventh': [1, 2, 5],
  },
};

/** The left hand's fingers in the progression, where it has the chords too, as in the tables read for the arpeggios; the same in every key. */
export const PROGRESSION_LEFT_FINGERINGS = {
  tonic: [5, 3, 1],
  subdominant: [5, 2, 1],
  'dominant-seventh': [5, 2, 1],
} as const;

/** The left hand lies over the five notes below the tonic; from memory, common practice, no source. */
export const CADENCE_BASS_FINGERINGS: Readonly<Record<CadenceChord, number>> = {
  tonic: 1,
  subdominant: 5,
  second: 5,
  dominant: 4,
  'dominant-seventh': 4,
};
