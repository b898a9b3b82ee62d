export type * from './types.ts';
export { buildExercise } from './build.ts';
export {
  ALL_FORMS,
  ALL_HANDS,
  ALL_MINOR_SCALES,
  allChoices,
  exerciseTitle,
  MOST_OCTAVES,
} from './choices.ts';
export { listedKey, nextKey } from './circle.ts';
export { ALL_KEYS, keyFacts, normaliseKey } from './keys.ts';
export { displayName, displayPitchClass, ENGLISH, keyName, noteName } from './names.ts';
export type { Language, NoteNaming, Tongue } from './names.ts';
