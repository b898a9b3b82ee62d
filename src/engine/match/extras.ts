import type { ExtraKind } from './types.ts';
import type { Filled } from './leftovers.ts';
import type { StruckNote } from './struck.ts';
import { BOUNDS, GHOST_SEMITONES } from './weights.ts';

/**
 * What an unanswered note was, and the step during which it sounded; null: not to be reported. Not reported are findings too
 * weak to call somebody's mistake, keys out of the hand's reach, and keys before the first note of the run or after its last
 * that are neither caught with it nor its repetition: they are not part of the attempt.
 */
export function extraKind(
  index: number,
  struck: readonly StruckNote[],
  filled: readonly Filled[],
): { readonly kind: ExtraKind; readonly step: number } | null {
  const note = struck[index]!;
  if (note.confidence < BOUNDS.extraConfidence || looksLikeGhost(note, struck, filled)) return null;
  const caughtWith = filled
    .filter(({ struck: other }) => {
      const right = struck[other]!;
      const apart = Math.abs(right.midi - note.midi);
      const apartSec = Math.abs(right.timeSec - note.timeSec);
      return apart >= 1 && apart <= BOUNDS.slipSemitones && apartSec <= BOUNDS.slipSec;
    })
    .sort((a, b) => apartFrom(note, struck[a.struck]!) - apartFrom(note, struck[b.struck]!))[0];
  if (caughtWith !== undefined) return { kind: 'slip', step: caughtWith.place.step };
  const before = lastBefore(note, struck, filled);
  if (before === undefined) return null;
  const step = before.place.step;
  const again = filled.some((other) => other.place.step === step && struck[other.struck]!.midi === note.midi);
  if (again) return { kind: 'repeat', step };
  const isLast = filled.every((other) => struck[other.struck]!.timeSec <= note.timeSec);
  return isLast || outOfReach(note, step, struck, filled) ? null : { kind: 'other', step };
}

/** Further from every key struck about its step than a hand stretches. */
function outOfReach(
  note: StruckNote,
  step: number,
  struck: readonly StruckNote[],
  filled: readonly Filled[],
): boolean {
  return filled
    .filter(({ place }) => Math.abs(place.step - step) <= 2)
    .every((other) => Math.abs(struck[other.struck]!.midi - note.midi) > BOUNDS.reachSemitones);
}

function apartFrom(note: StruckNote, other: StruckNote): number {
  return Math.abs(note.timeSec - other.timeSec);
}

function lastBefore(
  note: StruckNote,
  struck: readonly StruckNote[],
  filled: readonly Filled[],
): Filled | undefined {
  let latest: Filled | undefined;
  for (const other of filled) {
    const timeSec = struck[other.struck]!.timeSec;
    if (timeSec <= note.timeSec && (latest === undefined || timeSec >= struck[latest.struck]!.timeSec))
      latest = other;
  }
  return latest;
}

/**
 * A finding in the same instant as a right note and on one of its partials or an octave below it: a listener's ghost rather than a
 * key. However sure the listener is, octaves struck by mistake with a right note are rarer than ghosts of that kind.
 */
export function looksLikeGhost(
  note: StruckNote,
  struck: readonly StruckNote[],
  filled: readonly Filled[],
): boolean {
  return filled.some(({ struck: other }) => {
    const right = struck[other]!;
    return (
      Math.abs(right.timeSec - note.timeSec) <= BOUNDS.ghostSec &&
      GHOST_SEMITONES.includes(note.midi - right.midi)
    );
  });
}
