import { FOUR_NOTE_FINGERINGS, TRIAD_FINGERINGS } from '../fingering/index.ts';
import type { InversionFingers } from '../fingering/index.ts';
import { fingered } from './places.ts';
import type { Place } from './places.ts';
import { ARPEGGIO_INTERVALS, climb } from './runs.ts';
import type { Part } from './types.ts';

const POSITION_NAMES = ['root position', 'first inversion', 'second inversion'] as const;

/** Up one octave through four positions, down through three: seven chords, the top one once. */
const POSITION_ORDER = [0, 1, 2, 3, 2, 1, 0] as const;
const TOP_POSITION = 3;

/** The tonic triad and its inversions, solid, up and down one octave from `start`: seven chords. */
export const triadPlaces = (part: Part): readonly Place[] => inversions(part, 3, TRIAD_FINGERINGS);

/** The same with the lowest note doubled on top. */
export const fourNotePlaces = (part: Part): readonly Place[] => inversions(part, 4, FOUR_NOTE_FINGERINGS);

/** So many notes of the tonic arpeggio that follow each other, from each of them on. */
function inversions(
  { key: { mode }, hand, start }: Part,
  notes: number,
  fingerings: InversionFingers,
): readonly Place[] {
  const arpeggio = climb(start, ARPEGGIO_INTERVALS[mode], 2);
  return POSITION_ORDER.map((position, index) => {
    const inversion = position % POSITION_NAMES.length;
    return {
      keys: fingered(arpeggio.slice(position, position + notes), fingerings[hand][inversion]!),
      turn: index === TOP_POSITION,
      label: POSITION_NAMES[inversion]!,
    };
  });
}

/**
 * Seven positions note by note: the four on the way up from the lowest note to the highest, the three on the way down from the
 * highest to the lowest. Each position is named at its first note.
 */
export function broken(positions: readonly Place[]): readonly Place[] {
  return positions.flatMap(({ keys, turn, label }, index) => {
    const order = index <= TOP_POSITION ? keys : [...keys].reverse();
    return order.map((key, at) => ({
      keys: [key],
      turn: turn && at === order.length - 1,
      ...(at === 0 && label !== undefined && { label }),
    }));
  });
}
