import { Note } from 'tonal';
import { isBlack } from '../../base/units.ts';
import type { Hand, KeyParts } from '../types.ts';
import { begun, fingered } from './places.ts';
import type { Place } from './places.ts';
import { climb, upAndDown } from './runs.ts';
import type { Part } from './types.ts';

/** Above their own lowest note. */
const INVERSIONS = {
  first: { major: ['1P', '3m', '6m'], minor: ['1P', '3M', '6M'] },
  second: { major: ['1P', '4P', '6M'], minor: ['1P', '4P', '6m'] },
} as const;

/** The third of the tonic triad. */
export const thirdOf = ({ tonic, mode }: KeyParts): string =>
  Note.transpose(tonic, mode === 'major' ? '3M' : '3m');
/** The fifth of the tonic triad. */
export const fifthOf = ({ tonic }: KeyParts): string => Note.transpose(tonic, '5P');

/** The tonic arpeggio from its third, up and down, the top note once. */
export const firstInversionPlaces = (part: Part): readonly Place[] =>
  inversionPlaces(part, INVERSIONS.first[part.key.mode]);

/** The tonic arpeggio from its fifth, up and down, the top note once. */
export const secondInversionPlaces = (part: Part): readonly Place[] =>
  inversionPlaces(part, INVERSIONS.second[part.key.mode]);

function inversionPlaces(
  { hand, start, octaves, principle }: Part,
  intervals: readonly string[],
): readonly Place[] {
  const names = climb(start, intervals, octaves);
  const up = fingered(names, begun(triadFingers(names, hand), principle));
  return upAndDown(up, up);
}

const NOTES = 3;
const FOURTH = 5;

/**
 * Where the thumb falls: on the first note where that is a white key or there are none, else on the first white key beside a black one
 * which the hand has just left (right hand, going up) or goes on to (left hand). On the tonic's own arpeggios this gives the crossings
 * of the published tables. The fingers between are 2 and 4, or 3 where both steps of the hand are thirds, and in the left hand on a
 * black key or where the thumb's neighbour is a third off: common practice, no source. No crossing depends on them.
 */
export function triadFingers(names: readonly string[], hand: Hand): readonly number[] {
  const midis = names.map((name) => Note.midi(name)!);
  const blacks = midis.slice(0, NOTES).map(isBlack);
  const beside = hand === 'right' ? NOTES - 1 : 1;
  const onBlack = blacks[0]! && blacks.includes(false);
  const thumb = onBlack ? blacks.findIndex((black, at) => !black && blacks[(at + beside) % NOTES]) : 0;
  const semitones = (at: number): number => (midis[at + 1]! - midis[at]!) % 12;
  const thumbAt = (thumb + NOTES) % NOTES;
  const last = names.length - 1;
  const far = hand === 'right' ? farInRight(semitones, thumbAt) : farInLeft(semitones, blacks, thumbAt);
  return names.map((_, at) => {
    const above = (at - thumbAt + NOTES) % NOTES;
    const end = hand === 'right' ? last : 0;
    if (at === end && thumbAt === 0) return 5;
    if (above === 0) return 1;
    const isNear = hand === 'right' ? above === 1 : above === 2;
    return isNear ? 2 : far;
  });
}

/** The finger on the second key above the thumb: 3 where the hand lies over two thirds, 4 over a fourth and a third. */
function farInRight(semitones: (at: number) => number, thumb: number): number {
  return semitones(thumb) < FOURTH && semitones((thumb + 1) % NOTES) < FOURTH ? 3 : 4;
}

/** The finger on the second key below the thumb. */
function farInLeft(semitones: (at: number) => number, blacks: readonly boolean[], thumb: number): number {
  const [far, near] = [(thumb + 1) % NOTES, (thumb + 2) % NOTES];
  const fromThumb = semitones(near);
  const between = semitones(far);
  if (fromThumb < FOURTH && between < FOURTH) return 3;
  if (between >= FOURTH) return 4;
  return blacks[far]! ? 3 : 4;
}
