import { Note } from 'tonal';
import { FOUR_NOTE_FINGERINGS } from '../fingering/index.ts';
import { POSITION_NAMES, POSITION_ORDER, TOP_POSITION, TRIAD_POSITIONS } from './chords.ts';
import { fingered } from './places.ts';
import type { Place } from './places.ts';
import { octavesUp } from './runs.ts';
import type { Part } from './types.ts';

/** The tonic triad and its inversions with the lowest note doubled on top, solid, up and down an octave: seven chords. */
export function fourNotePlaces({ key: { mode }, hand, start }: Part): readonly Place[] {
  return POSITION_ORDER.map((position, index) => {
    const names = TRIAD_POSITIONS[mode][position].map((interval) => Note.transpose(start, interval));
    const inversion = position % POSITION_NAMES.length;
    return {
      keys: fingered([...names, octavesUp(names[0]!, 1)], FOUR_NOTE_FINGERINGS[hand][inversion]!),
      turn: index === TOP_POSITION,
      label: POSITION_NAMES[inversion]!,
    };
  });
}
