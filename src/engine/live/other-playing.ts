import type { Passage, PlayedNote } from '../listen/index.ts';
import { LEAST_LIKELY, recogniseFrom } from '../match/index.ts';

/**
 * Whether a stretch is told as an attempt. As in a long recording, what is unlikely to be any exercise is other playing, in the same
 * key perhaps; what was not chosen (`isAnother`) must be recognised.
 */
export function isExercise(notes: readonly PlayedNote[], stretch: Passage, isAnother: boolean): boolean {
  const own = notes.filter(({ timeSec }) => timeSec >= stretch.startSec && timeSec <= stretch.endSec);
  const { choice, confidence } = recogniseFrom({ notes: own, tuning: { cents: 0 } });
  return choice !== null || (!isAnother && confidence >= LEAST_LIKELY);
}
