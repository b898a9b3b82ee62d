import { exerciseIn, type Exercise } from '../../../engine/index.ts';
import type { SentAttempt } from '../../../io/review/index.ts';
import { spotsOf, type Spot } from '../../plots/pearls/spots.ts';
import { marksOf, type Mark } from './marks.ts';

/** What is drawn and told of an attempt that was sent. */
export interface DrawnAttempt {
  readonly exercise: Exercise;
  readonly spots: readonly Spot[];
  readonly marks: readonly Mark[];
}

/** An attempt that was sent → its exercise, its spots on the string, and what is said of them. */
export function drawnOf(attempt: SentAttempt): DrawnAttempt {
  const exercise = exerciseIn(attempt.report);
  const spots = spotsOf(attempt.report, exercise);
  return { exercise, spots, marks: marksOf(attempt, spots) };
}
