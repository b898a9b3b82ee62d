import { hasOctaves, takesMinorScale } from '../exercise/index.ts';
import type { ExerciseChoice, Form } from '../exercise/index.ts';

/** What one key asks for, in the order in which it is begun. Common practice, no source. */
export const SET = [
  'arpeggio',
  'scale',
  'triads',
  'broken-triads',
  'progression',
] as const satisfies readonly Form[];
export type SetForm = (typeof SET)[number];

/** The same key and octaves in another form, with the right hand first; a minor scale is the harmonic one at first. */
export function inForm({ key, octaves }: ExerciseChoice, form: Form): ExerciseChoice {
  return {
    key,
    form,
    hands: 'right',
    octaves: hasOctaves(form) ? octaves : 1,
    ...(takesMinorScale(key, form) && { minorScale: 'harmonic' as const }),
  };
}

/** The same exercise in another key, with the right hand first. */
export function inKey(choice: ExerciseChoice, key: string): ExerciseChoice {
  return inForm({ ...choice, key }, choice.form);
}
