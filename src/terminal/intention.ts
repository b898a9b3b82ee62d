import { ALL_RHYTHMS, buildExercise } from '../engine/index.ts';
import type { ExerciseChoice, Intention } from '../engine/index.ts';
import { usageProblem } from './problems.ts';
import { readNumber, readWord } from './values.ts';

/** What of an exercise was to be practised. */
export const INTENTION_OPTIONS = {
  stretch: { type: 'string' },
  times: { type: 'string' },
  rhythm: { type: 'string' },
} as const;

type IntentionValues = { readonly [Option in keyof typeof INTENTION_OPTIONS]?: string | undefined };
const MOST_TIMES = 12;

/** Options → an intention; null: none was given. Steps count from 1, as they are shown. Throws Problem (wrong usage). */
export function readIntention(values: IntentionValues, choice: ExerciseChoice | null): Intention | null {
  const [given] = (Object.keys(INTENTION_OPTIONS) as (keyof IntentionValues)[]).filter(
    (option) => values[option] !== undefined,
  );
  if (given === undefined) return null;
  if (choice === null) throw usageProblem((t) => t.alone(`--${given}`, ['--key', '--form', '--hands']));
  const { stretch, times, rhythm } = values;
  return {
    ...(stretch !== undefined && { stretch: readStretch(stretch, buildExercise(choice).steps.length) }),
    times: times === undefined ? 1 : readNumber('times', times, 1, MOST_TIMES),
    rhythm: rhythm === undefined ? 'even' : readWord('rhythm', rhythm, ALL_RHYTHMS),
  };
}

function readStretch(text: string, steps: number): NonNullable<Intention['stretch']> {
  const [, from, to] = /^(\d+)[-–](\d+)$/.exec(text) ?? [];
  const [fromStep, toStep] = [Number(from) - 1, Number(to) - 1];
  if (fromStep >= 0 && fromStep < toStep && toStep < steps) return { fromStep, toStep };
  throw usageProblem((t) => t.noStretch(text, steps));
}
