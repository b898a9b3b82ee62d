import {
  ALL_FORMS,
  ALL_HANDS,
  ALL_KEYS,
  ALL_MINOR_SCALES,
  exerciseOf,
  hasOctaves,
  normaliseKey,
  takesMinorScale,
} from '../engine/index.ts';
import type { ExerciseChoice } from '../engine/index.ts';
import { usageProblem } from './problems.ts';
import { hint, readNumber, readWord } from './values.ts';

/** An exercise of the set, said by its parts. */
export const CHOICE_OPTIONS = {
  key: { type: 'string' },
  form: { type: 'string' },
  hands: { type: 'string' },
  octaves: { type: 'string' },
  'minor-scale': { type: 'string' },
} as const;
/** A passage of one's own, in a file; --hands goes with it too. */
export const PASSAGE_OPTIONS = {
  exercise: { type: 'string' },
  bars: { type: 'string' },
  passage: { type: 'string' },
} as const;

type Options = typeof CHOICE_OPTIONS & typeof PASSAGE_OPTIONS;
type ChoiceValues = { readonly [Option in keyof Options]?: string | undefined };

/** All of key, form and hands, or none of them; or the passage that a file holds. */
export function readChoice(values: ChoiceValues, passage: ExerciseChoice | null): ExerciseChoice | null {
  const own = passageFor(values, passage);
  if (own !== null) return own;
  const given = (Object.keys(CHOICE_OPTIONS) as (keyof typeof CHOICE_OPTIONS)[]).filter(
    (option) => values[option] !== undefined,
  );
  if (given.length === 0) return null;
  const needed = (['key', 'form', 'hands'] as const).filter((option) => values[option] === undefined);
  if (needed.length > 0) {
    const options = needed.map((option) => `--${option}`);
    throw usageProblem((t) => t.alone(`--${given[0]}`, options));
  }
  return settledChoice({ ...values, hands: values.hands });
}

export function readExercises(
  values: ChoiceValues,
  passage: ExerciseChoice | null,
): 'all' | { readonly key: string } | ExerciseChoice {
  const own = passageFor(values, passage);
  if (own !== null) return own;
  const { key, form } = values;
  if (
    key === undefined &&
    Object.values(values).every((value) => value === undefined || typeof value === 'boolean')
  ) {
    return 'all';
  }
  if (key === undefined) throw usageProblem((t) => t.addKey);
  if (form !== undefined) return settledChoice({ ...values, hands: values.hands ?? 'right' });
  return { key: readKey(key) };
}

function settledChoice(values: ChoiceValues): ExerciseChoice {
  const minorScale = values['minor-scale'];
  const choice: ExerciseChoice = {
    key: readKey(values.key ?? ''),
    form: readWord('form', values.form ?? '', ALL_FORMS),
    hands: readWord('hands', values.hands ?? '', ALL_HANDS),
    octaves: values.octaves === undefined ? 1 : readNumber('octaves', values.octaves, 1, 4),
    ...(minorScale !== undefined && { minorScale: readWord('minor-scale', minorScale, ALL_MINOR_SCALES) }),
  };
  const { key, form, octaves } = choice;
  if (!hasOctaves(form) && octaves !== 1) throw usageProblem((t) => t.oneOctave(form));
  if (minorScale !== undefined && !takesMinorScale(key, form))
    throw usageProblem((t) => t.noMinorScale(form, key));
  return choice;
}

function readKey(text: string): string {
  try {
    return normaliseKey(text);
  } catch {
    throw usageProblem((t, all) => t.noKey(text, hint(all, text, ALL_KEYS)));
  }
}

/** The passage of `--exercise`, by the hands that were said; null: none was asked for. */
function passageFor(values: ChoiceValues, passage: ExerciseChoice | null): ExerciseChoice | null {
  const { exercise, hands } = values;
  if (exercise === undefined) {
    const alone = (['bars', 'passage'] as const).find((option) => values[option] !== undefined);
    if (alone !== undefined) throw usageProblem((t) => t.needsExercise(`--${alone}`));
    return null;
  }
  const other = (['key', 'form', 'octaves', 'minor-scale'] as const).find(
    (option) => values[option] !== undefined,
  );
  if (other !== undefined) throw usageProblem((t) => t.besideExercise(`--${other}`));
  if (passage === null || hands === undefined) return passage;
  const own = { ...passage, hands: readWord('hands', hands, ALL_HANDS) };
  if (exerciseOf(own) === null) throw usageProblem((t) => t.notForHands(own.hands));
  return own;
}
