import { Note } from 'tonal';
import { isBlack } from '../../base/units.ts';
import type { Hand } from '../types.ts';
import type { FingeredName, Place } from './places.ts';
import { octavesUp, upAndDown } from './runs.ts';
import type { Part } from './types.ts';

const OCTAVE = 12;

/**
 * All twelve keys up and down from the tonic, the top once: sharps going up and flats coming down, the tonic by its own name.
 * Common practice, no source.
 */
export function chromaticPlaces({ hand, start, octaves }: Part): readonly Place[] {
  const lowest = Note.midi(start)!;
  const named = (spell: (midi: number) => string): readonly FingeredName[] =>
    Array.from({ length: OCTAVE * octaves + 1 }, (_, above) => ({
      name: above % OCTAVE === 0 ? octavesUp(start, above / OCTAVE) : spell(lowest + above),
      finger: above === 0 && hand === 'right' && !isBlack(lowest) ? 1 : fingerOn(lowest + above, hand),
    }));
  return upAndDown(named(Note.fromMidiSharps), named(Note.fromMidi));
}

/** Pitch classes of the white keys that have a white neighbour: above E and B in the right hand, below F and C in the left. */
const SECOND: Readonly<Record<Hand, readonly number[]>> = { right: [5, 0], left: [4, 11] };

/**
 * 3 on every black key, 1 on the white ones, 2 on the second of two white ones side by side; the right hand begins with its thumb.
 * Common practice, no source.
 */
function fingerOn(midi: number, hand: Hand): number {
  if (isBlack(midi)) return 3;
  return SECOND[hand].includes(midi % OCTAVE) ? 2 : 1;
}
