import type { ExerciseChoice } from '../../engine/index.ts';

/** An exercise as the options that choose it: --key "D major" --form scale --hands right --octaves 2 */
export function asOptions(choice: ExerciseChoice): string {
  const { key, form, hands, octaves, minorScale, passage, fingering, notesABeat, register } = choice;
  const principles = [...new Set([fingering?.left ?? [], fingering?.right ?? []].flat())];
  if (passage !== undefined) return `--exercise FILE --hands ${hands}`;
  return [
    `--key "${key}" --form ${form} --hands ${hands}`,
    ...(octaves > 1 ? [`--octaves ${octaves}`] : []),
    ...(minorScale === undefined ? [] : [`--minor-scale ${minorScale}`]),
    ...(principles.length === 0 ? [] : [`--fingering ${principles.join(',')}`]),
    ...(notesABeat === undefined ? [] : [`--notes-a-beat ${notesABeat}`]),
    ...(register === undefined ? [] : [`--register ${Math.abs(register)}-${register > 0 ? 'up' : 'down'}`]),
  ].join(' ');
}
