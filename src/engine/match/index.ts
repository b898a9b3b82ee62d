export type * from './types.ts';
export { RECOGNITION } from './types.ts';
export { crossesFingers } from './align/index.ts';
export { heldOver } from './held.ts';
export {
  exerciseStretches,
  handSaid,
  LEAST_CONFIDENCE,
  LEAST_LIKELY,
  likelyReadings,
  nearestReadings,
  recogniseFrom,
  underWay,
} from './recognise/index.ts';
export type { ExerciseStretch, UnderWay } from './recognise/index.ts';
import type { Exercise } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import { bestShift } from './align/index.ts';
export { bestShift, octaveHigher } from './align/index.ts';
import { betterExercise } from './recognise/index.ts';
import type { Alignment } from './types.ts';

/**
 * Played notes against the expected steps, whatever octave they were played in. Of several runs the best whole one is
 * told and the others remarked. Where another exercise of the set explains the notes clearly better, it is named in
 * `betterFit`. Confidence in a note weighs: extra notes of little confidence, those that sit on a partial of a right note
 * struck with them, and those out of the hand's reach are left out (costs); they stay in Heard.
 */
export function matchNotes(heard: Heard, exercise: Exercise): Alignment {
  const alignment = bestShift(heard, exercise);
  const better = betterExercise(heard, alignment);
  return better === null ? alignment : { ...alignment, betterFit: better };
}
