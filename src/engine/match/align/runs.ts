import type { Answer } from './path.ts';

/** One playing of the exercise, with what was played twice in it set apart. */
export interface Run {
  /** one answer a place, in order of place; their times rise with the place except within a chord */
  readonly answers: readonly Answer[];
  /** struck notes that repeat what an answer of this run already says: index and whether the player went back for it */
  readonly again: readonly {
    readonly struck: number;
    readonly kind: 'repeat' | 'restart';
    readonly step: number;
  }[];
  /** where the player went back: from the step last reached to a step before it */
  readonly goingsBack: readonly { readonly atStep: number; readonly backToStep: number }[];
}

/**
 * Answers → runs of the exercise, in order of time. A run begins where the player goes back to the first step, or goes
 * back at all after the last one. Within a run the first playing of a step stands, with its mistakes: who goes back to mend a
 * note has missed it first. Only what lies beyond it is taken from the later legs.
 */
export function runsOf(answers: readonly Answer[], lastStep: number): readonly Run[] {
  const runs: (readonly Answer[])[][] = [];
  for (const leg of legsOf(answers)) {
    const run = runs.at(-1);
    const isOver = run?.flat().some(({ place }) => place.step === lastStep);
    const from = firstStep(leg);
    const struckAgain = run !== undefined && from === lastStepOf(run.at(-1)!);
    const anew = run === undefined || (!struckAgain && (from === 0 || isOver));
    if (anew) runs.push([leg]);
    else run.push(leg);
  }
  return runs.map(mergeLegs);
}

/** The run with the most notes answered; the first of equals. */
export function bestRun(runs: readonly Run[]): Run | undefined {
  let best: Run | undefined;
  for (const run of runs) if (best === undefined || run.answers.length > best.answers.length) best = run;
  return best;
}

function legsOf(answers: readonly Answer[]): readonly (readonly Answer[])[] {
  const legs: Answer[][] = [];
  for (const answer of answers) (legs[answer.leg] ??= []).push(answer);
  return legs;
}

function firstStep(leg: readonly Answer[]): number {
  return leg[0]!.place.step;
}

function lastStepOf(leg: readonly Answer[]): number {
  return leg.at(-1)!.place.step;
}

function mergeLegs(legs: readonly (readonly Answer[])[]): Run {
  let kept: readonly Answer[] = legs[0]!;
  const again: { struck: number; kind: 'repeat' | 'restart'; step: number }[] = [];
  const goingsBack: { atStep: number; backToStep: number }[] = [];
  legs.slice(1).forEach((leg, index) => {
    const atStep = lastStepOf(legs[index]!);
    const backToStep = firstStep(leg);
    const kind = backToStep === atStep ? 'repeat' : 'restart';
    if (kind === 'restart') goingsBack.push({ atStep, backToStep });
    const cut = lastStepOf(kept) + 1;
    const dropped = [
      ...kept.filter((answer) => answer.place.step >= cut),
      ...leg.filter((answer) => answer.place.step < cut),
    ];
    again.push(...dropped.map(({ struck, place }) => ({ struck, kind, step: place.step }) as const));
    kept = [
      ...kept.filter((answer) => answer.place.step < cut),
      ...leg.filter((answer) => answer.place.step >= cut),
    ];
  });
  return {
    answers: [...kept].sort((a, b) => a.place.place - b.place.place),
    again: again.sort((a, b) => a.struck - b.struck),
    goingsBack,
  };
}
