import type { Hand } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { criteriaAsked, isPractised } from './assigned.ts';
import { criteriaAt, leastTempi, USUAL_GOALS, type Goals } from './goals.ts';
import { exerciseId } from './group.ts';
import { standingOf, wasReady } from './standing.ts';
import type { Assignment, Practised, Standing } from './types.ts';

/**
 * The attempts at each exercise (`byExercise`) → where each stands, by `exerciseId`. What a teacher asks of an assigned exercise is what it is judged by, also after
 * it is met. Hands together are ready only where each hand alone is, or once was, unless a teacher assigned them.
 */
export function standingsOf(
  groups: ReadonlyMap<string, readonly Practised[]>,
  criteria: Criteria,
  assignments: readonly Assignment[] = [],
  goals: Goals = USUAL_GOALS,
): ReadonlyMap<string, Standing> {
  const whole = assignments.filter(({ asked }) => !isPractised(asked));
  const assigned = new Map(whole.map((one) => [exerciseId(one.asked.exercise), one]));
  const alone = new Map(
    [...groups].map(([id, attempts]): readonly [string, Standing] => {
      const { exercise } = attempts.at(-1)!.summary;
      const tempi = leastTempi(goals, exercise);
      const by = criteriaAt(goals, exercise, criteria);
      const assignment = assigned.get(id);
      if (assignment === undefined) return [id, standingOf(exercise, attempts, by, tempi)];
      const { asked, metMs } = assignment;
      const askedBpm = asked.targetBpm === null ? tempi : [asked.targetBpm];
      const standing = standingOf(exercise, attempts, criteriaAsked(asked, by), askedBpm);
      return [id, metMs === null ? { ...standing, targetBpm: asked.targetBpm } : standing];
    }),
  );
  const handReady = (standing: Standing, hand: Hand): boolean => {
    const exercise = { ...standing.exercise, hands: hand };
    const id = exerciseId(exercise);
    return (
      alone.get(id)?.level === 'ready' ||
      wasReady(groups.get(id) ?? [], criteriaAt(goals, exercise, criteria), leastTempi(goals, exercise))
    );
  };
  return new Map(
    [...alone].map(([id, standing]) => {
      if (standing.level !== 'ready' || standing.exercise.hands !== 'together' || assigned.has(id))
        return [id, standing];
      const waitsFor = HANDS.filter((hand) => !handReady(standing, hand));
      return [id, waitsFor.length === 0 ? standing : { ...standing, level: 'nearly', waitsFor }];
    }),
  );
}

const HANDS: readonly Hand[] = ['left', 'right'];
