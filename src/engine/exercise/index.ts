export type * from './types.ts';
export { BUILDABLE, buildExercise, exerciseOf, stepMs } from './build.ts';
export { playedBy } from './played-by.ts';
export {
  ALL_LOUDNESSES,
  ALL_RHYTHMS,
  ALL_TOUCHES,
  INTENTION,
  isWhole,
  LOUDNESS,
  MOST_COPIES,
  PRACTISED,
  RHYTHM,
  sameIntention,
  TOUCH,
  WHOLE,
} from './intention.ts';
export type { Intention, Loudness, Practising, Rhythm, Touch } from './intention.ts';
export {
  accentsOf,
  copiesMeant,
  exerciseIn,
  groupOf,
  LONG_TO_SHORT,
  practisedExercise,
  stepsIn,
  stretchIn,
} from './practised.ts';
export { canBeBlocked, oneWay, waysIn } from './stretches.ts';
export type { Stretch, Way } from './stretches.ts';
export {
  ALL_FORMS,
  ALL_HANDS,
  ALL_MINOR_SCALES,
  allChoices,
  choiceIn,
  exerciseTitle,
  GROUPED_FORMS,
  handsFor,
  hasOctaves,
  isCadence,
  isCommonElsewhere,
  isDiatonic,
  isDotted,
  isRecognised,
  isSolid,
  notesABeat,
  notesABeatOf,
  octaveCounts,
  REGISTERS,
  takesMinorScale,
  usualOctaves,
} from './choices.ts';
export {
  keepFingering,
  principlesFor,
  unfingered,
  withKeptFingers,
  withPrinciple,
  writeFinger,
} from './fingers.ts';
export { barlines, handsIn, hasUpbeat, passageId, samePassage, stepsForHands } from './passage.ts';
export { CHOICE, FORM, MOST_OCTAVES, OWN_PASSAGE, PASSAGE_MOST, PRINCIPLE } from './types.ts';
export { midiOf, nameAt, placeOf, withSign } from './on-staff.ts';
export { octavesUp } from './forms/index.ts';
export { ALL_KEYS, keyFacts, listedKey, nextKey, normaliseKey, otherNameOf } from './keys.ts';
export { FORM_NAMES, theForm } from './form-names.ts';
export {
  displayName,
  ENGLISH,
  keyName,
  nameWithOctave,
  noteName,
  octaveIn,
  pitchClassName,
  plainName,
} from './names.ts';
export type { Language, NoteNaming, Locale } from './names.ts';
