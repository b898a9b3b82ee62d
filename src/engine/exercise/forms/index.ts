import type { Form } from '../types.ts';
import { brokenTriadPlaces, progressionPlaces, triadPlaces } from './chords.ts';
import { arpeggioPlaces, scalePlaces } from './runs.ts';
import type { FormDefinition } from './types.ts';

export type { Place } from './places.ts';

const RUN = {
  notesABeat: 2,
  mostOctaves: 4,
  usualOctaves: 2,
  hasMinorScales: false,
  isSolid: false,
} as const;
const CHORDS = {
  notesABeat: 1,
  mostOctaves: 1,
  usualOctaves: 1,
  hasMinorScales: false,
  isSolid: true,
} as const;

/** Every form there is, in the order in which they are offered. */
export const FORMS: Readonly<Record<Form, FormDefinition>> = {
  arpeggio: { ...RUN, places: arpeggioPlaces },
  scale: { ...RUN, hasMinorScales: true, places: scalePlaces },
  triads: { ...CHORDS, places: triadPlaces },
  'broken-triads': { ...CHORDS, notesABeat: 3, isSolid: false, places: brokenTriadPlaces },
  progression: { ...CHORDS, places: progressionPlaces },
};
