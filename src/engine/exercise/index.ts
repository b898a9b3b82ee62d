export type * from './types.ts';
export { BUILDABLE, buildExercise, exerciseOf, stepMs } from './build.ts';
export {
  ALL_RHYTHMS,
  INTENTION,
  isWhole,
  MOST_COPIES,
  PRACTISED,
  RHYTHM,
  sameIntention,
  WHOLE,
} from './intention.ts';
export type { Intention, Practising, Rhythm } from './intention.ts';
export {
  copiesMeant,
  exerciseIn,
  groupOf,
  LONG_TO_SHORT,
  practisedExercise,
  stepsIn,
  stretchIn,
} from './practised.ts';
export { oneWay, waysIn } from './stretches.ts';
export type { Stretch, Way } from './stretches.ts';
export {
  ALL_FORMS,
  ALL_HANDS,
  ALL_MINOR_SCALES,
  allChoices,
  exerciseTitle,
  hasOctaves,
  isDiatonic,
  isRecognised,
  isSolid,
  notesABeat,
  octaveCounts,
  takesMinorScale,
  usualOctaves,
} from './choices.ts';
export { MOST_OCTAVES } from './types.ts';
export { listedKey, nextKey, otherNameOf, relativeKey } from './circle.ts';
export { ALL_KEYS, keyFacts, normaliseKey } from './keys.ts';
export { displayName, displayPitchClass, ENGLISH, keyName, noteName } from './names.ts';
export type { Language, NoteNaming, Locale } from './names.ts';
