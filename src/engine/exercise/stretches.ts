import { isSolid } from './choices.ts';
import type { Intention } from './intention.ts';
import type { Exercise, ExerciseChoice, ExpectedStep } from './types.ts';

export type Stretch = NonNullable<Intention['stretch']>;
export type Way = 'up' | 'down';

/** The ways that an exercise, or a stretch of it, can be practised in by itself: none without a turn. */
export function waysIn({ steps }: Pick<Exercise, 'steps'>): readonly Way[] {
  return steps.some(({ turn }) => turn) ? ['up', 'down'] : [];
}

/**
 * A stretch, or the whole where there is none → the same notes one way only. A stretch that lies on the other way is turned over: the
 * way down has the notes of the way up, as far from the turn; one that crosses the turn ends, or begins, at it. Null: no such way.
 */
export function oneWay({ steps }: Pick<Exercise, 'steps'>, way: Way, stretch?: Stretch): Stretch | null {
  const turn = steps.find((step) => step.turn)?.step;
  if (turn === undefined) return null;
  const last = steps.length - 1;
  const { fromStep, toStep } = stretch ?? { fromStep: 0, toStep: last };
  const own = { up: toStep <= turn, down: fromStep >= turn };
  const turned = own.up || own.down ? !own[way] : false;
  const [from, to] = turned ? [2 * turn - toStep, 2 * turn - fromStep] : [fromStep, toStep];
  const [low, high] = way === 'up' ? [0, turn] : [turn, last];
  const cut = { fromStep: Math.max(low, from), toStep: Math.min(high, to) };
  return cut.fromStep < cut.toStep ? cut : null;
}

/**
 * Whether its hand positions can be struck as chords: notes one by one, of one hand, since both hands change at different places, and
 * with fingers that are known.
 */
export function canBeBlocked({ form, hands }: Pick<ExerciseChoice, 'form' | 'hands'>): boolean {
  return form !== 'passage' && !isSolid(form) && hands !== 'together';
}

/**
 * Steps of one hand → its positions, each struck as one chord: a new one begins where the fingering goes against the hand, and a
 * finger that comes again on the way back belongs to the position in which it stands. Common practice, no source.
 */
export function positionsOf(steps: readonly ExpectedStep[]): readonly ExpectedStep[] {
  const groups: ExpectedStep[][] = [];
  steps.forEach((step, at) => {
    if (at === 0 || step.crossings.length > 0) groups.push([]);
    groups.at(-1)!.push(step);
  });
  return groups.map((group) => {
    const keys = new Map(group.flatMap(({ notes }) => notes.map((note) => [note.midi, note] as const)));
    return {
      ...group[0]!,
      notes: [...keys.values()].sort((a, b) => a.midi - b.midi),
      crossings: [],
      turn: group.some(({ turn }) => turn),
    };
  });
}
