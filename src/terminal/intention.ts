import {
  ALL_LOUDNESSES,
  ALL_RHYTHMS,
  ALL_TOUCHES,
  buildExercise,
  canBeBlocked,
  oneWay,
} from '../engine/index.ts';
import type { Exercise, ExerciseChoice, Intention } from '../engine/index.ts';
import { usageProblem } from './problems.ts';
import { readNumber, readWord } from './values.ts';

/** What of an exercise was to be practised. */
export const INTENTION_OPTIONS = {
  stretch: { type: 'string' },
  times: { type: 'string' },
  rhythm: { type: 'string' },
  blocked: { type: 'boolean' },
  touch: { type: 'string' },
  loudness: { type: 'string' },
  ladder: { type: 'string' },
} as const;

type IntentionValues = {
  readonly [Option in keyof typeof INTENTION_OPTIONS]?:
    (Option extends 'blocked' ? boolean : string) | undefined;
};
const MOST_TIMES = 12;
const MOST_LADDER_BPM = 40;

/** Options → an intention; null: none was given. Steps count from 1, as they are shown. Throws Problem (wrong usage). */
export function readIntention(values: IntentionValues, choice: ExerciseChoice | null): Intention | null {
  const [given] = (Object.keys(INTENTION_OPTIONS) as (keyof IntentionValues)[]).filter(
    (option) => values[option] !== undefined,
  );
  if (given === undefined) return null;
  if (choice === null) throw usageProblem((t) => t.alone(`--${given}`, ['--key', '--form', '--hands']));
  const { stretch, times, rhythm, blocked, touch, loudness, ladder } = values;
  if (blocked === true && !canBeBlocked(choice)) throw usageProblem((t) => t.notBlocked);
  return {
    ...(stretch !== undefined && { stretch: readStretch(stretch, buildExercise(choice)) }),
    times: times === undefined ? 1 : readNumber('times', times, 1, MOST_TIMES),
    rhythm: rhythm === undefined ? 'even' : readWord('rhythm', rhythm, ALL_RHYTHMS),
    ...(blocked === true && { blocked }),
    ...(touch !== undefined && { touch: readWord('touch', touch, ALL_TOUCHES) }),
    ...(loudness !== undefined && { loudness: readLoudness(loudness, choice) }),
    ...(ladder !== undefined && { ladderBpm: readNumber('ladder', ladder, 1, MOST_LADDER_BPM) }),
  };
}

function readStretch(text: string, exercise: Exercise): NonNullable<Intention['stretch']> {
  const steps = exercise.steps.length;
  const way = text === 'up' || text === 'down' ? oneWay(exercise, text) : null;
  if (way !== null) return way;
  const [, from, to] = /^(\d+)[-–](\d+)$/.exec(text) ?? [];
  const [fromStep, toStep] = [Number(from) - 1, Number(to) - 1];
  if (fromStep >= 0 && fromStep < toStep && toStep < steps) return { fromStep, toStep };
  throw usageProblem((t) => t.noStretch(text, steps));
}

function readLoudness(text: string, { hands }: ExerciseChoice): NonNullable<Intention['loudness']> {
  const loudness = readWord('loudness', text, ALL_LOUDNESSES);
  const ofBoth = loudness === 'left-over-right' || loudness === 'right-over-left';
  if (ofBoth && hands !== 'together') throw usageProblem((t) => t.needsBothHands(`--loudness ${text}`));
  return loudness;
}
