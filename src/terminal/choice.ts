import {
  ALL_FORMS,
  ALL_HANDS,
  ALL_KEYS,
  ALL_MINOR_SCALES,
  exerciseOf,
  hasOctaves,
  normaliseKey,
  notesABeatOf,
  principlesFor,
  takesMinorScale,
  withPrinciple,
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
  fingering: { type: 'string' },
  'notes-a-beat': { type: 'string' },
  register: { type: 'string' },
} as const;
/** A passage of one's own, in a file; --hands goes with it too. */
export const PASSAGE_OPTIONS = {
  exercise: { type: 'string' },
  bars: { type: 'string' },
  passage: { type: 'string' },
} as const;

/** They say what an exercise of the set is; the hands of a passage may be said too. */
const OF_A_SET = (Object.keys(CHOICE_OPTIONS) as (keyof typeof CHOICE_OPTIONS)[]).filter(
  (option) => option !== 'hands',
);

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
  return withOthers(choice, values);
}

/** What of an exercise is not as usual. */
function withOthers(choice: ExerciseChoice, values: ChoiceValues): ExerciseChoice {
  const { form } = choice;
  const beat = values['notes-a-beat'];
  const notesABeat = beat === undefined ? undefined : notesABeatOf(form).find((one) => String(one) === beat);
  if (beat !== undefined && notesABeat === undefined)
    throw usageProblem((t) => t.noNotesABeat(form, notesABeatOf(form)));
  const [, octaves, way] =
    values.register === undefined
      ? []
      : /^(\d)-(up|down)$/.exec(readWord('register', values.register, REGISTERS))!;
  const asked = {
    ...(notesABeat !== undefined && { notesABeat }),
    ...(octaves !== undefined && {
      register: ((way === 'up' ? 1 : -1) * Number(octaves)) as NonNullable<ExerciseChoice['register']>,
    }),
  };
  const whole = { ...fingered(choice, values.fingering), ...asked };
  const { register } = values;
  if (register !== undefined && exerciseOf(choice) !== null && exerciseOf(whole) === null)
    throw usageProblem((t) => t.beyondKeyboard(register));
  return whole;
}

const REGISTERS = ['1-up', '2-up', '3-up', '1-down', '2-down', '3-down'] as const;

/** "second-first,thumbs-together": each principle for the hands that have it. */
function fingered(choice: ExerciseChoice, names: string | undefined): ExerciseChoice {
  const hands = (['left', 'right'] as const).filter((hand) => ['together', hand].includes(choice.hands));
  return (names?.split(',') ?? []).reduce((now, text) => {
    const name = text.trim().toLowerCase();
    const found = hands.flatMap((hand) =>
      principlesFor(minorSaid(choice), hand).map(({ principle }) => ({ hand, principle })),
    );
    const own = found.filter(({ principle }) => principle === name);
    const known = [...new Set(found.map(({ principle }) => principle))];
    if (own.length === 0) throw usageProblem((t) => t.noFingering(text, choice.form, choice.key, known));
    return own.reduce((one, { hand, principle }) => withPrinciple(one, hand, principle), now);
  }, choice);
}

const minorSaid = (choice: ExerciseChoice): ExerciseChoice => exerciseOf(choice)?.choice ?? choice;

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
  const other = OF_A_SET.find((option) => values[option] !== undefined);
  if (other !== undefined) throw usageProblem((t) => t.besideExercise(`--${other}`));
  if (passage === null || hands === undefined) return passage;
  const own = { ...passage, hands: readWord('hands', hands, ALL_HANDS) };
  if (exerciseOf(own) === null) throw usageProblem((t) => t.notForHands(own.hands));
  return own;
}
