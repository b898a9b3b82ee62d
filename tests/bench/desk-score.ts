import { buildExercise } from '../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../src/engine/exercise/index.ts';
import type { Passage, Recognition } from '../../src/engine/index.ts';
import type { SortedPassage } from '../../src/engine/sorting/index.ts';
import type { Played } from './desk-sittings.ts';

export type Outcome = 'right' | 'cannot tell' | 'a semitone off' | 'wrong';

/** What was played and where it lay, against what was recognised. Which hand played alone is judged by `isHandRight`. */
export function outcomeOf(
  { choice, octaveShift }: Pick<Recognition, 'choice' | 'octaveShift'>,
  exercise: ExerciseChoice,
  truthShift: number,
): Outcome {
  if (choice === null) return 'cannot tell';
  const same =
    choice.form === exercise.form &&
    choice.octaves === exercise.octaves &&
    choice.minorScale === exercise.minorScale &&
    (choice.hands === 'together') === (exercise.hands === 'together') &&
    choice.key.split(' ')[1] === exercise.key.split(' ')[1];
  if (!same) return 'wrong';
  const apart = Math.abs(firstKey(choice, octaveShift) - firstKey(exercise, truthShift));
  return apart === 0 ? 'right' : apart === 1 ? 'a semitone off' : 'wrong';
}

function firstKey(choice: ExerciseChoice, octaves: number): number {
  return buildExercise(choice).steps[0]!.notes[0]!.midi + 12 * octaves;
}

/** What became of one attempt of a sitting. */
export interface Cut {
  /** one piece holds all of it, from before its first stroke to after its last, and nothing of anything else */
  readonly whole: boolean;
  /** pieces that hold any of it */
  readonly pieces: readonly SortedPassage[];
  readonly joined: boolean;
}

/** After the last stroke at least so much is heard of it, seconds. */
const RINGS_SEC = 0.03;

export function cutOf(attempt: Played, all: readonly Played[], found: readonly SortedPassage[]): Cut {
  const pieces = found.filter((piece) => holds(piece, attempt));
  const [only] = pieces;
  const others = all.filter((other) => other !== attempt && pieces.some((piece) => holds(piece, other)));
  const whole =
    only !== undefined &&
    pieces.length === 1 &&
    others.length === 0 &&
    only.startSec <= attempt.strokesSec[0]! &&
    only.endSec >= attempt.strokesSec.at(-1)! + RINGS_SEC;
  return { whole, pieces, joined: others.length > 0 };
}

export function holds({ startSec, endSec }: Passage, { strokesSec }: Played): boolean {
  return strokesSec.some((sec) => sec >= startSec && sec < endSec);
}
