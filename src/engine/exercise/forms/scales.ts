import { Note } from 'tonal';
import { isBlack } from '../../base/units.ts';
import type { Hand } from '../types.ts';
import type { FingeredName, Place } from './places.ts';
import { octavesUp, scalePlaces, scaleWays, upAndDown } from './runs.ts';
import type { Part } from './types.ts';

export const STEPS_AN_OCTAVE = 7;
/** The third degree, counted from 0. */
export const MEDIANT = 2;

/**
 * Both hands begin on one key, the right hand's tonic, and go apart and back; the left hand's fingers are those of its scale coming
 * down. Common practice, no source. Neither way is up or down, so that nothing is a turn.
 */
export function contraryPlaces(part: Part): readonly Place[] {
  const lowest = part.hand === 'left' ? octavesUp(part.start, 1 - part.octaves) : part.start;
  const { up, down } = scaleWays({ ...part, start: lowest });
  const path =
    part.hand === 'left'
      ? [...[...down].reverse(), ...up.slice(1)]
      : [...up.slice(0, -1), ...[...down].reverse()];
  return path.map((key) => ({ keys: [key], turn: false }));
}

/** The hands a tenth apart: the left begins on the tonic, the right on the third above its own. Common practice, no source. */
export const tenthsPlaces = (part: Part): readonly Place[] =>
  scaleFrom(part.hand === 'right' ? MEDIANT : 0, part);

/** The hands a sixth apart: the left begins on the third, the right on the tonic. Common practice, no source. */
export const sixthsPlaces = (part: Part): readonly Place[] =>
  scaleFrom(part.hand === 'left' ? MEDIANT : 0, part);

/** The scale from one of its degrees to the same degree, each key under the finger that it has in the scale from the tonic. */
function scaleFrom(degree: number, part: Part): readonly Place[] {
  if (degree === 0) return scalePlaces(part);
  const { up, down } = scaleWays({ ...part, octaves: part.octaves + 1 });
  const to = degree + STEPS_AN_OCTAVE * part.octaves + 1;
  return upAndDown(up.slice(degree, to), down.slice(degree, to));
}

/** Each note with its octave, both by one hand. */
export function octavesPlaces(part: Part): readonly Place[] {
  return scalePlaces(part).map(({ keys: [key], turn }) => ({ keys: octaveOn(key!, part.hand), turn }));
}

/** Thumb and little finger, on a black key thumb and fourth. Common practice, no source; smaller hands take the fifth throughout. */
function octaveOn({ name }: FingeredName, hand: Hand): readonly FingeredName[] {
  const outer = isBlack(Note.midi(name)!) ? 4 : 5;
  const [low, high] = hand === 'right' ? [1, outer] : [outer, 1];
  return [
    { name, finger: low },
    { name: octavesUp(name, 1), finger: high },
  ];
}
