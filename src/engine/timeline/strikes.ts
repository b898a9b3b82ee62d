import type { Exercise } from '../exercise/index.ts';
import type { ExtraKind } from '../match/index.ts';

/** A note that answers a step, rightly or not. */
export interface StruckNote {
  readonly step: number;
  /** onset, seconds from the start of the recording */
  readonly timeSec: number;
}

/** A step as it was struck, by one hand or by both. */
export interface Strike<N extends StruckNote = StruckNote> {
  readonly step: number;
  /** where the exercise has it, beats from its beginning */
  readonly beat: number;
  /** mean onset of its notes: what is struck together is one strike, and moves as one */
  readonly timeSec: number;
  /** in the order in which they were handed over */
  readonly notes: readonly N[];
  /** the first of all; or a note was struck again, the player went back, or a pause was meant, on the way here */
  readonly anew: boolean;
}

/** An extra note that takes time of its own: what goes by about it is no interval of the exercise. */
export function isDetour(kind: ExtraKind): boolean {
  return kind === 'repeat' || kind === 'restart';
}

/**
 * Notes in any order → their strikes in order of time. `detoursSec`: when notes were struck again or the player went back, or
 * perhaps did; such a moment parts what comes before it from what comes after.
 */
export function strikesOf<N extends StruckNote>(
  notes: readonly N[],
  detoursSec: readonly number[],
  exercise: Exercise,
): readonly Strike<N>[] {
  const bySteps = new Map<number, N[]>();
  for (const note of notes) bySteps.set(note.step, [...(bySteps.get(note.step) ?? []), note]);
  return [...bySteps]
    .map(([step, struck]) => ({
      step,
      beat: exercise.steps[step]?.beat ?? step,
      timeSec: struck.reduce((sum, { timeSec }) => sum + timeSec, 0) / struck.length,
      notes: struck,
    }))
    .sort((a, b) => a.timeSec - b.timeSec || a.step - b.step)
    .map((strike, at, all) => {
      const before = all[at - 1];
      const anew =
        before === undefined ||
        before.step >= strike.step ||
        exercise.steps[strike.step]?.pauseBefore === true ||
        detoursSec.some((sec) => sec > before.timeSec && sec < strike.timeSec);
      return { ...strike, anew };
    });
}

/** From one strike to that of the next step, with nothing missed, struck again or gone back for between. */
export interface Unbroken<S> {
  readonly from: S;
  readonly to: S;
}

/**
 * Strikes in order of time → the unbroken ways between them. `follows`: whether a step is the next after another; one hand of a passage
 * has nothing to play in some of them.
 */
export function unbrokenOf<S extends Strike>(
  strikes: readonly S[],
  follows: (from: number, to: number) => boolean = (from, to) => to === from + 1,
): readonly Unbroken<S>[] {
  return strikes.slice(1).flatMap((to, at) => {
    const from = strikes[at]!;
    return to.anew || !follows(from.step, to.step) || to.timeSec <= from.timeSec ? [] : [{ from, to }];
  });
}
