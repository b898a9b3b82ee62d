/**
 * What the npm package shows, and all of it: the engine, and a reader of WAV files. What is not named here may change from
 * one version to the next. How it is used: README.md beside this file.
 */
export { readWav } from './read-wav.ts';

export { assess, assessRecording } from '../engine/index.ts';
export type { AssessOptions, Assessment, FoundAttempt } from '../engine/index.ts';

export { allChoices, buildExercise, keyFacts } from '../engine/index.ts';
export type {
  Crossing,
  Exercise,
  ExerciseChoice,
  ExpectedNote,
  ExpectedStep,
  Form,
} from '../engine/index.ts';
export type {
  Hand,
  Hands,
  KeyFacts,
  Language,
  MinorScale,
  Mode,
  NoteNaming,
  Locale,
} from '../engine/index.ts';

export { createListener, learnPiano, listenAndKeep } from '../engine/index.ts';
export type { AudioFinding, AudioInput, Candidate, FindingKind, Heard, KeptSound } from '../engine/index.ts';
export type { KeyProfile, Learnt, Listener, ListenOptions, Passage, PianoProfile } from '../engine/index.ts';
export type { PlayedNote, Tuning } from '../engine/index.ts';

export { createLiveListener } from '../engine/index.ts';
export type { Expected, LiveListener, LiveEvent, LiveOptions, OwnSound } from '../engine/index.ts';

export type { Alignment, CourseRemark, ExtraKind, ExtraNote, MatchedNote } from '../engine/index.ts';
export type { Recheck, Recognition, RecogniseOptions } from '../engine/index.ts';

export { DEFAULT_CRITERIA } from '../engine/index.ts';
export type { ChordChange, ChordStrike, Criteria, CrossingDelay, Estimate } from '../engine/index.ts';
export type { IntervalDeviation, Measures, NotMeasured, Report, ReportedNote } from '../engine/index.ts';
export type { ReportOptions, Togetherness, Words } from '../engine/index.ts';
