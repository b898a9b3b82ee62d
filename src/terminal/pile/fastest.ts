import { byExercise, DEFAULT_CRITERIA, fastestEven, summarise } from '../../engine/index.ts';
import type { ExerciseChoice, Fastest } from '../../engine/index.ts';
import type { PileAttempt } from './types.ts';

/** A student's fastest tempo still even at one exercise. */
export interface FastestAt extends Pick<Fastest, 'bpm' | 'plusMinus'> {
  readonly exercise: ExerciseChoice;
}

/** The attempts of one student, oldest first → the fastest tempo still even at each exercise, as far as there is one. */
export function fastestOf(attempts: readonly PileAttempt[]): readonly FastestAt[] {
  const practised = attempts.flatMap(({ recording, found: { report, startSec } }) =>
    report === null
      ? []
      : [{ whenMs: (recording.whenMs ?? 0) + 1000 * startSec, summary: summarise(report) }],
  );
  return [...byExercise(practised).values()].flatMap((group) => {
    const fastest = fastestEven(group, DEFAULT_CRITERIA);
    if (fastest === null) return [];
    const { bpm, plusMinus } = fastest;
    return [{ exercise: group[0]!.summary.exercise, bpm, plusMinus }];
  });
}
