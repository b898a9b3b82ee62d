import { buildExercise } from '../exercise/index.ts';
import type { ExerciseChoice } from '../exercise/index.ts';
import type { PlayedNote } from '../listen/index.ts';
import { LEAST_LIKELY, recogniseFrom } from '../match/index.ts';
import type { ExerciseStretch } from '../match/index.ts';

/** A passage that was chosen and not gone through to its end is told where so much of it was played: less may be other playing. */
const LEAST_SHARE = 0.5;

/** Keys to be struck in all of it. */
export const keysOf = (choice: ExerciseChoice): number =>
  buildExercise(choice).steps.reduce((sum, { notes }) => sum + notes.length, 0);

/**
 * Whether a stretch is told as an attempt: what was chosen, gone through to its end, is. The rest as in a long recording: what is
 * unlikely to be any exercise is other playing, in the same key perhaps; and what was not chosen must be recognised.
 */
export function isExercise(
  notes: readonly PlayedNote[],
  stretch: ExerciseStretch,
  chosen: ExerciseChoice | null,
  own: readonly ExerciseChoice[],
): boolean {
  if (stretch.isChosen && stretch.isWhole) return true;
  const played = notes.filter(({ timeSec }) => timeSec >= stretch.startSec && timeSec <= stretch.endSec);
  // Nobody recognises a passage but by itself.
  if (stretch.isChosen && chosen?.passage !== undefined) return played.length >= LEAST_SHARE * keysOf(chosen);
  const { choice, confidence } = recogniseFrom({ notes: played, tuning: { cents: 0 } }, { own });
  return choice !== null || ((chosen === null || stretch.isChosen) && confidence >= LEAST_LIKELY);
}
