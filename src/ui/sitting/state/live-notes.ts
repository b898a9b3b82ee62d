import type { LiveEvent } from '../../../engine/index.ts';

/** A note of the attempt in progress, as it is drawn. */
export interface LiveNote {
  readonly id: number;
  readonly timeSec: number;
  readonly midi: number;
  readonly levelDb: number;
  /** false: a first guess, which may be corrected or withdrawn */
  readonly final: boolean;
}

/** The notes on the string after one more event of the live ear, in order of time; those before an attempt fall away. */
export function withEvent(notes: readonly LiveNote[], event: LiveEvent): readonly LiveNote[] {
  switch (event.kind) {
    case 'struck': {
      const { id, timeSec, midi, levelDb, final } = event;
      const others = notes.filter((note) => note.id !== id);
      return [...others, { id, timeSec, midi, levelDb, final }].sort(
        (a, b) => a.timeSec - b.timeSec || a.id - b.id,
      );
    }
    case 'withdrawn':
      return notes.filter((note) => note.id !== event.id);
    case 'started':
      // Not `timeSec`: on a piano whose tuning is not known yet, the very first note is not sure, and belongs to it all the same.
      return notes.filter((note) => note.timeSec >= event.cutSec);
    case 'forgotten':
      return notes.filter((note) => note.timeSec > event.timeSec);
    default:
      return notes;
  }
}
