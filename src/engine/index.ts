/** The engine's only door. */
export { BPM, MIDI, SECONDS, told } from './base/shapes.ts';
export type { Shape } from './base/shapes.ts';
export { assess, assessHeard } from './assess.ts';
export type { AssessOptions, Assessment } from './assess.ts';
export { assessRecording, pianoAfter } from './assess-recording.ts';
export type { FoundAttempt } from './assess-recording.ts';
export * from './exercise/index.ts';
export * from './listen/index.ts';
export * from './live/index.ts';
export * from './match/index.ts';
export * from './notices/index.ts';
export type * from './recheck/index.ts';
export * from './report/index.ts';
export { tellReport } from './report/version-0-1.ts';
export * from './standing/index.ts';
export { beatsPerStep, STOP_BEATS, timelineOf } from './timeline/index.ts';
export type { TimedStrike, Timeline } from './timeline/index.ts';
