import {
  ALL_HANDS,
  ALL_KEYS,
  ALL_LOUDNESSES,
  exerciseOf,
  GROUPED_FORMS,
  notesABeatOf,
  octaveCounts,
  REGISTERS,
  SET,
} from '../../engine/index.ts';
import type { ExerciseChoice, Form, Hands, Loudness, MinorScale, NotesABeat } from '../../engine/index.ts';
import { strings } from '../language/index.ts';
import { shownKey } from '../names/index.ts';

interface Choice<T> {
  readonly value: T;
  readonly label: string;
}

/** Values in their order → options with their labels in the language of the page. */
const labelled = <T extends string>(
  values: readonly T[],
  labels: Readonly<Record<T, string>>,
): readonly Choice<T>[] => values.map((value) => ({ value, label: labels[value] }));

/** The keys round the circle of fifths, as the engine orders them: major from C, minor from A. */
export function keyGroups(): readonly {
  readonly label: string;
  readonly options: readonly Choice<string>[];
}[] {
  return (['major', 'minor'] as const).map((mode) => ({
    label: strings().prepare.groups[mode],
    options: ALL_KEYS.filter((key) => key.endsWith(mode)).map((key) => ({
      value: key,
      label: shownKey(key),
    })),
  }));
}

/** What every key is asked for: shown at once. */
export const formOptions = (): readonly Choice<Form>[] => labelled(SET, strings().prepare.FORMS);

/** All else, by groups. */
export function moreForms(): readonly {
  readonly label: string;
  readonly options: readonly Choice<Form>[];
}[] {
  const { FORMS, formGroups } = strings().prepare;
  const isFurther = (form: Form): boolean => !SET.some((one) => one === form);
  return GROUPED_FORMS.map(({ group, forms }) => ({
    label: formGroups[group],
    options: labelled(forms.filter(isFurther), FORMS),
  })).filter(({ options }) => options.length > 0);
}

export const handOptions = (): readonly Choice<Hands>[] => labelled(ALL_HANDS, strings().prepare.HANDS);

export const octaveOptions = (form: Form): readonly Choice<number>[] =>
  octaveCounts(form).map((value) => ({ value, label: String(value) }));

export const beatOptions = (form: Form): readonly Choice<NotesABeat>[] =>
  notesABeatOf(form).map((value) => ({ value, label: String(value) }));

/** The registers of an exercise that lie on the keyboard, octaves from the printed one, highest first. */
export const registersOf = (choice: ExerciseChoice): readonly number[] => {
  const { register: _, ...printed } = choice;
  const isThere = (register: ExerciseChoice['register']): boolean =>
    exerciseOf({ ...printed, ...(register !== undefined && { register }) }) !== null;
  return [...REGISTERS.filter((octaves) => octaves > 0 && isThere(octaves)).toReversed(), 0].concat(
    REGISTERS.filter((octaves) => octaves < 0 && isThere(octaves)).toReversed(),
  );
};

/** One hand can only be over the other where both play. */
export const loudnessesFor = (hands: Hands): readonly Loudness[] =>
  ALL_LOUDNESSES.filter((one) => hands === 'together' || !/^(left|right)-/.test(one));

const MINOR_ORDER: readonly MinorScale[] = ['harmonic', 'melodic', 'natural'];

export const minorScaleOptions = (): readonly Choice<MinorScale>[] =>
  labelled(MINOR_ORDER, strings().prepare.MINOR_SCALES);

/** Slowest and fastest tempo that may be aimed at, beats a minute: what metronomes have (common practice, no source). */
export const TEMPO_BPM = { least: 30, most: 208 } as const;
