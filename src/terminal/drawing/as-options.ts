import type { ExerciseChoice } from '../../engine/index.ts';

/** An exercise as the options that choose it: --key "D major" --form scale --hands right --octaves 2 */
export function asOptions({ key, form, hands, octaves, minorScale, passage }: ExerciseChoice): string {
  if (passage !== undefined) return `--exercise FILE --hands ${hands}`;
  return [
    `--key "${key}" --form ${form} --hands ${hands}`,
    ...(octaves > 1 ? [`--octaves ${octaves}`] : []),
    ...(minorScale === undefined ? [] : [`--minor-scale ${minorScale}`]),
  ].join(' ');
}
