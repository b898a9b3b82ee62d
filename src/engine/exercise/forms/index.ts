import type { Form } from '../types.ts';
import { cadences, progressionPlaces } from './cadences.ts';
import { broken, fourNotePlaces, triadPlaces } from './chords.ts';
import { chromaticPlaces } from './chromatic.ts';
import { doubleSixthsPlaces, doubleThirdsPlaces } from './double-notes.ts';
import { fiveFingerPlaces } from './five-finger.ts';
import { furtherArpeggio } from './further-arpeggios.ts';
import { arpeggioPlaces, scalePlaces } from './runs.ts';
import { contraryPlaces, octavesPlaces, sixthsPlaces, tenthsPlaces } from './scales.ts';
import type { FormDefinition } from './types.ts';

export { FORM_GROUPS } from './types.ts';
export type { FormGroup } from './types.ts';
export { octavesUp } from './runs.ts';
export { canBeginWithSecond } from './places.ts';
export type { Place } from './places.ts';

/** A line of single notes up and down from the tonic. */
const RUN = {
  group: 'arpeggios',
  notesABeat: 2,
  mostOctaves: 4,
  usualOctaves: 2,
  hasMinorScales: false,
  isSolid: false,
  isDiatonic: true,
  recognised: 'always',
  isCommonElsewhere: false,
  hasNumerals: false,
  leftOctavesBelow: 1,
  needsBothHands: false,
  fingeredAs: null,
  hasCrossings: true,
  lowest: ({ tonic }) => tonic,
} as const satisfies Omit<FormDefinition, 'places'>;
/** Chords in one place of the keyboard. */
const CHORDS = {
  ...RUN,
  group: 'chords',
  notesABeat: 1,
  mostOctaves: 1,
  usualOctaves: 1,
  isSolid: true,
} as const;
/** Four notes to a beat. Other playing is full of such figures, and major and minor sound alike: it is heard where it was chosen. */
const FOURS = { ...RUN, notesABeat: 4, recognised: 'where-chosen' } as const;
/** Scales and arpeggios in another guise, up to two octaves; of the scales one hand alone is not what makes them so. */
const OTHER_RUN = { ...RUN, mostOctaves: 2 } as const;
const OTHER_SCALE = {
  ...OTHER_RUN,
  group: 'scales',
  hasMinorScales: true,
  recognised: 'together',
  needsBothHands: true,
  fingeredAs: 'scale',
} as const;
/** Two notes at once by one hand: both hands in thirds or sixths sound the same, so that it is heard where it was chosen. */
const DOUBLE_NOTES = {
  ...OTHER_SCALE,
  isSolid: true,
  hasCrossings: false,
  recognised: 'where-chosen',
  needsBothHands: false,
  fingeredAs: null,
} as const;
/** The left hand has one note to each chord of the right. */
const BASS_AND_CHORDS = {
  ...CHORDS,
  group: 'cadences',
  hasNumerals: true,
  recognised: 'together',
  isCommonElsewhere: true,
  hasCrossings: false,
} as const;

/** Every form there is, in the order in which they are offered. */
export const FORMS: Readonly<Record<Form, FormDefinition>> = {
  arpeggio: { ...RUN, fingeredAs: 'arpeggio', places: arpeggioPlaces },
  scale: { ...RUN, group: 'scales', hasMinorScales: true, fingeredAs: 'scale', places: scalePlaces },
  triads: { ...CHORDS, places: triadPlaces },
  'broken-triads': { ...CHORDS, notesABeat: 3, isSolid: false, places: (part) => broken(triadPlaces(part)) },
  progression: { ...CHORDS, group: 'cadences', hasNumerals: true, places: progressionPlaces },
  'dominant-seventh': { ...FOURS, ...furtherArpeggio('dominant-seventh') },
  'diminished-seventh': { ...FOURS, isDiatonic: false, ...furtherArpeggio('diminished-seventh') },
  // Every other step brings the thumb: the hand glides, and none of them is a place to look at.
  chromatic: {
    ...FOURS,
    group: 'scales',
    isDiatonic: false,
    hasCrossings: false,
    places: chromaticPlaces,
  },
  // It is how every scale begins, and many a tune.
  'five-finger': {
    ...RUN,
    group: 'scales',
    mostOctaves: 1,
    usualOctaves: 1,
    recognised: 'where-chosen',
    places: fiveFingerPlaces,
  },
  'contrary-motion': { ...OTHER_SCALE, places: contraryPlaces },
  'two-octaves-apart': { ...OTHER_SCALE, leftOctavesBelow: 2, places: scalePlaces },
  'tenths-apart': { ...OTHER_SCALE, places: tenthsPlaces },
  'sixths-apart': { ...OTHER_SCALE, places: sixthsPlaces },
  'thirds-apart': { ...OTHER_SCALE, leftOctavesBelow: 0, places: tenthsPlaces },
  'scale-in-octaves': {
    ...OTHER_SCALE,
    isSolid: true,
    hasCrossings: false,
    leftOctavesBelow: 2,
    needsBothHands: false,
    fingeredAs: null,
    places: octavesPlaces,
  },
  'double-thirds': { ...DOUBLE_NOTES, places: doubleThirdsPlaces },
  'double-sixths': { ...DOUBLE_NOTES, leftOctavesBelow: 2, places: doubleSixthsPlaces },
  'arpeggio-first-inversion': { ...OTHER_RUN, ...furtherArpeggio('arpeggio-first-inversion') },
  'arpeggio-second-inversion': { ...OTHER_RUN, ...furtherArpeggio('arpeggio-second-inversion') },
  'four-note-chords': { ...CHORDS, recognised: 'together', leftOctavesBelow: 2, places: fourNotePlaces },
  'broken-four-note-chords': {
    ...CHORDS,
    notesABeat: 4,
    isSolid: false,
    recognised: 'together',
    hasCrossings: false,
    leftOctavesBelow: 2,
    places: (part) => broken(fourNotePlaces(part)),
  },
  ...cadences('cadence', BASS_AND_CHORDS),
  ...cadences('cadence-seventh', BASS_AND_CHORDS),
  ...cadences('cadence-second', BASS_AND_CHORDS),
  // It is written out in the choice (`passage.ts`), in beats of its own.
  passage: {
    ...RUN,
    notesABeat: 1,
    mostOctaves: 1,
    usualOctaves: 1,
    isDiatonic: false,
    recognised: 'where-chosen',
    places: () => [],
  },
};
