/** After the last step nothing more is awaited: so long after its onset all that was struck with it is certain, seconds. */
const WHOLE_SEC = 0.6;
/** A learner thinks so long and goes on, seconds; what is under way stands as long in a recording (`FOLLOWING.longestPauseSec`). */
export const THINKING_SEC = 8;
/** It is told that the exercise is waited for where nothing has come for so long, and for so many times the usual wait, seconds. */
const TOLD_SEC = 2;
/** Slow players wait: one note in three seconds is the slowest that is followed. */
const SLOWEST_SEC = 3;
/** … and one note may come so much later than the others */
const SLACK = 1.5;

/** Of the exercise under way: whole, still to go on, or none. */
export type Course = 'whole' | 'unfinished' | 'none';

/** How long after the last onset playing is over, seconds. `longestSec`: the longest of the latest waits from moment to moment. */
export function endsAfterSec(course: Course, silenceSec: number, longestSec: number): number {
  if (course === 'whole') return WHOLE_SEC;
  const playing = Math.max(silenceSec, SLACK * Math.min(longestSec, SLOWEST_SEC));
  return course === 'unfinished' ? Math.max(THINKING_SEC, playing) : playing;
}

/** How long after the last onset it is said that the rest is waited for, seconds. */
export function saysAfterSec(longestSec: number): number {
  return Math.max(TOLD_SEC, SLACK * longestSec);
}

/** What is doubtful, before anything has begun, is remembered so long, seconds: it may be the first note of slow playing. */
export const DOUBTFUL_SEC = SLACK * SLOWEST_SEC;

/** Notes that have begun nothing are forgotten so long after the last of them, seconds. */
export function forgottenAfterSec(silenceSec: number): number {
  return Math.max(silenceSec, THINKING_SEC);
}
