import type { Form } from '../types.ts';
import { brokenTriadPlaces, progressionPlaces, triadPlaces } from './chords.ts';
import { chromaticPlaces } from './chromatic.ts';
import { fiveFingerPlaces } from './five-finger.ts';
import { arpeggioPlaces, scalePlaces } from './runs.ts';
import { diminishedSeventhPlaces, dominantOf, dominantSeventhPlaces, leadingNoteOf } from './sevenths.ts';
import type { FormDefinition } from './types.ts';

export type { Place } from './places.ts';

/** A line of single notes up and down from the tonic. */
const RUN = {
  notesABeat: 2,
  mostOctaves: 4,
  usualOctaves: 2,
  hasMinorScales: false,
  isSolid: false,
  isDiatonic: true,
  isRecognised: true,
  hasCrossings: true,
  lowest: ({ tonic }) => tonic,
} as const satisfies Omit<FormDefinition, 'places'>;
/** Chords in one place of the keyboard. */
const CHORDS = { ...RUN, notesABeat: 1, mostOctaves: 1, usualOctaves: 1, isSolid: true } as const;
/** Four notes to a beat. Other playing is full of such figures, and major and minor sound alike: it is heard where it was chosen. */
const FOURS = { ...RUN, notesABeat: 4, isRecognised: false } as const;

/** Every form there is, in the order in which they are offered. */
export const FORMS: Readonly<Record<Form, FormDefinition>> = {
  arpeggio: { ...RUN, places: arpeggioPlaces },
  scale: { ...RUN, hasMinorScales: true, places: scalePlaces },
  triads: { ...CHORDS, places: triadPlaces },
  'broken-triads': { ...CHORDS, notesABeat: 3, isSolid: false, places: brokenTriadPlaces },
  progression: { ...CHORDS, places: progressionPlaces },
  'dominant-seventh': { ...FOURS, lowest: dominantOf, places: dominantSeventhPlaces },
  'diminished-seventh': {
    ...FOURS,
    isDiatonic: false,
    lowest: leadingNoteOf,
    places: diminishedSeventhPlaces,
  },
  // Every other step brings the thumb: the hand glides, and none of them is a place to look at.
  chromatic: {
    ...FOURS,
    isDiatonic: false,
    hasCrossings: false,
    lowest: RUN.lowest,
    places: chromaticPlaces,
  },
  // It is how every scale begins, and many a tune.
  'five-finger': { ...RUN, mostOctaves: 1, usualOctaves: 1, isRecognised: false, places: fiveFingerPlaces },
  // It is written out in the choice (`passage.ts`), in beats of its own.
  passage: {
    ...RUN,
    notesABeat: 1,
    mostOctaves: 1,
    usualOctaves: 1,
    isDiatonic: false,
    isRecognised: false,
    places: () => [],
  },
};
