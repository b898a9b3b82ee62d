import { Note } from 'tonal';
import { isBlack } from '../../base/units.ts';
import type { Hand, KeyParts } from '../types.ts';
import { begun, fingered } from './places.ts';
import type { Place } from './places.ts';
import { climb, upAndDown } from './runs.ts';
import type { Part } from './types.ts';

/** Above their own root. */
const CHORDS = {
  'dominant-seventh': ['1P', '3M', '5P', '7m'],
  'diminished-seventh': ['1P', '3m', '5d', '7d'],
} as const;

/** The dominant: its seventh chord is the same in a major key and in the minor one of the same tonic. */
export const dominantOf = ({ tonic }: KeyParts): string => Note.transpose(tonic, '5P');
/** The leading note, raised in minor. */
export const leadingNoteOf = ({ tonic }: KeyParts): string => Note.transpose(tonic, '7M');

/** V7 note by note from its root, up and down, the top note once. */
export const dominantSeventhPlaces = (part: Part): readonly Place[] =>
  seventhPlaces(part, CHORDS['dominant-seventh']);

/** The diminished seventh on the leading note, note by note, up and down, the top note once. */
export const diminishedSeventhPlaces = (part: Part): readonly Place[] =>
  seventhPlaces(part, CHORDS['diminished-seventh']);

function seventhPlaces(
  { hand, start, octaves, principle }: Part,
  intervals: readonly string[],
): readonly Place[] {
  const names = climb(start, intervals, octaves);
  const up = fingered(names, begun(seventhFingers(names, hand), principle));
  return upAndDown(up, up);
}

const NOTES = 4;

/**
 * Fingers 1 2 3 4 over and over, so that the thumb falls on the root where that is a white key, and else on the first white key
 * beside a black one which the hand has just left (right hand, going up) or goes on to (left hand): common practice, no source. On a
 * black root books also begin with 2; no crossing depends on it.
 */
function seventhFingers(names: readonly string[], hand: Hand): readonly number[] {
  const blacks = names.slice(0, NOTES).map((name) => isBlack(Note.midi(name)!));
  const beside = hand === 'right' ? NOTES - 1 : 1;
  const thumb = blacks[0] ? blacks.findIndex((black, at) => !black && blacks[(at + beside) % NOTES]) : 0;
  const last = names.length - 1;
  return names.map((_, at) => {
    const above = (at - thumb + NOTES) % NOTES;
    if (hand === 'right') return at === last && thumb === 0 ? NOTES + 1 : above + 1;
    return at === 0 && thumb === 0 ? NOTES + 1 : ((NOTES - above) % NOTES) + 1;
  });
}
