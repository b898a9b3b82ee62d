import * as v from 'valibot';
import { told, type Shape } from '../base/shapes.ts';
import {
  ALL_KEYS,
  FORM,
  listedKey,
  MOST_OCTAVES,
  octaveCounts,
  takesMinorScale,
  TOUCH,
} from '../exercise/index.ts';
import type { ExerciseChoice, Form } from '../exercise/index.ts';

export const SYLLABUS_FORMAT = 'evenfall-syllabus';

/** What one key asks for, in the order in which it is begun. Common practice, no source. */
export const SET = [
  'arpeggio',
  'scale',
  'triads',
  'broken-triads',
  'progression',
] as const satisfies readonly Form[];
export type SetForm = (typeof SET)[number];

/** Least and most that may be asked, beats a minute: what a metronome has. */
export const SYLLABUS_BPM = { least: 20, most: 300 } as const;
/** The same of how uneven loudness may be, dB: what is just heard (0.7–1.2, Slade et al. 2022), and two steps of dynamics. */
export const SYLLABUS_DB = { least: 1, most: 12 } as const;
/** The most of everything that a syllabus may hold. */
export const SYLLABUS_MOST = { levels: 40, asks: 40, nameLetters: 60 } as const;

export const ASK = v.pipe(
  v.object({
    form: FORM,
    octaves: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(MOST_OCTAVES)),
    leastBpm: told(
      'beats a minute at which it counts as ready; null: any tempo will do',
      v.nullable(v.pipe(v.number(), v.minValue(SYLLABUS_BPM.least), v.maxValue(SYLLABUS_BPM.most))),
    ),
    touch: v.exactOptional(told('how it is to be joined to count as ready, as far as that is heard', TOUCH)),
    loudnessDb: v.exactOptional(
      told(
        'how uneven its loudness may be to count as ready, dB, where the keys of the piano are known',
        v.pipe(v.number(), v.minValue(SYLLABUS_DB.least), v.maxValue(SYLLABUS_DB.most)),
      ),
    ),
    together: told('hands together too, after each hand alone', v.boolean()),
  }),
  v.check(({ form, octaves }) => octaveCounts(form).includes(octaves)),
);
export const LEVEL = v.object({
  name: v.pipe(v.string(), v.maxLength(SYLLABUS_MOST.nameLetters)),
  keys: told(
    'in the order in which they are begun',
    v.pipe(v.array(v.picklist(ALL_KEYS)), v.minLength(1), v.maxLength(ALL_KEYS.length)),
  ),
  asks: told(
    'of each of these keys, in the order in which they are begun',
    v.pipe(v.array(ASK), v.minLength(1), v.maxLength(SYLLABUS_MOST.asks)),
  ),
});
/** What is begun when, and how fast it is to be: levels, the first one first. */
export const SYLLABUS = v.object({
  format: v.literal(SYLLABUS_FORMAT),
  version: v.literal(1),
  levels: v.pipe(v.array(LEVEL), v.minLength(1), v.maxLength(SYLLABUS_MOST.levels)),
});
/** Something asked of each key of a level. */
export type Ask = Shape<typeof ASK>;
export type SyllabusLevel = Shape<typeof LEVEL>;
export type Syllabus = Shape<typeof SYLLABUS>;

/** An ask of one key → the exercise, right hand first; a minor scale is the harmonic one at first. */
export function exerciseOfAsk({ form, octaves }: Ask, key: string): ExerciseChoice {
  return {
    key,
    form,
    hands: 'right',
    octaves,
    ...(takesMinorScale(key, form) && { minorScale: 'harmonic' as const }),
  };
}

/** Where a syllabus asks for an exercise, whichever hand plays it: index of the level, and what is asked; the lowest level first. */
export function asksFor(
  { levels }: Pick<Syllabus, 'levels'>,
  { key, form, octaves }: Pick<ExerciseChoice, 'key' | 'form' | 'octaves'>,
): readonly { readonly level: number; readonly ask: Ask }[] {
  const listed = listedKey(key);
  return levels.flatMap(({ keys, asks }, level) =>
    keys.includes(listed)
      ? asks.filter((ask) => ask.form === form && ask.octaves === octaves).map((ask) => ({ level, ask }))
      : [],
  );
}

/**
 * What else a level asks of the key of an exercise, in order: of the lowest level that asks for that exercise; of the lowest
 * that asks for anything in its key where none does.
 */
export function setOfKey({ levels }: Syllabus, exercise: ExerciseChoice): readonly ExerciseChoice[] {
  const key = listedKey(exercise.key);
  const level =
    levels[asksFor({ levels }, exercise)[0]?.level ?? -1] ?? levels.find(({ keys }) => keys.includes(key));
  return (level?.asks ?? []).map((ask) => exerciseOfAsk(ask, exercise.key));
}

/** All keys that a syllabus asks for, each once, in the order in which they are begun. */
export function keysInOrder({ levels }: Syllabus): readonly string[] {
  return [...new Set(levels.flatMap(({ keys }) => keys))];
}
