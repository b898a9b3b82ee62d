import type { ExerciseChoice } from '../../src/engine/exercise/index.ts';
import type { Heard } from '../../src/engine/index.ts';
import { renderPerformance } from '../support/render.ts';
import type { HomeKnobs, Performance, PianoName } from '../support/render.ts';
import { homeOf } from './attempts.ts';
import { chanceFor, COURSES, deskAttempt, deskExercise } from './desk-attempts.ts';
import type { Course } from './desk-attempts.ts';
import { ALL_NOODLING, noodle } from './desk-noodling.ts';
import type { Noodling } from './desk-noodling.ts';
import { heardCached } from './heard-cached.ts';

/** One recording of one thing. */
export interface DeskCase {
  readonly kind: Course | Noodling;
  /** null: no exercise */
  readonly exercise: ExerciseChoice | null;
  readonly octaveShift: number;
  readonly tuningCents: number;
  readonly heard: Heard;
}

/** `count` attempts of each course and as many pieces of other playing in all, heard on a piano. */
export async function deskCases(
  piano: PianoName,
  count: number,
  onCase: (done: number) => void,
): Promise<DeskCase[]> {
  const cases: DeskCase[] = [];
  const add = async (
    made: Omit<DeskCase, 'heard' | 'tuningCents'>,
    performance: Performance,
    index: number,
  ) => {
    const random = chanceFor(`home of ${made.kind} ${piano}`, index);
    const home: Partial<HomeKnobs> = homeOf(random);
    const spec = { seed: index, piano, exercise: made.exercise ?? deskExercise(0, random), home };
    const heard = await heardCached([performance, spec], () => renderPerformance(performance, spec));
    cases.push({ ...made, tuningCents: home.tuningCents!, heard });
    onCase(cases.length);
  };
  for (const kind of COURSES)
    for (let index = 0; index < (kind === 'broken off' ? count / 4 : count); index++) {
      const random = chanceFor(`${kind} ${piano}`, index);
      const { exercise, octaveShift, performance } = deskAttempt(deskExercise(index, random), kind, random);
      await add({ kind, exercise, octaveShift }, performance, index);
    }
  for (let index = 0; index < count; index++) {
    const kind = ALL_NOODLING[index % ALL_NOODLING.length]!;
    const random = chanceFor(`${kind} ${piano}`, index);
    const performance = noodle(kind, deskExercise(index, random), random);
    await add({ kind, exercise: null, octaveShift: 0 }, performance, index);
  }
  return cases;
}
