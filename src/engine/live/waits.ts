import type { PlayedNote } from '../listen/index.ts';

/** notes so near are one moment, seconds */
export const MOMENT_SEC = 0.05;
/** a stop before the playing: longer than this, and than so many times the longest wait from moment to moment after it */
const STOP = { sec: 1, times: 2 } as const;
/** of the latest waits from moment to moment so many tell how slow the playing is */
const LATEST = 8;
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

type Timed = Pick<PlayedNote, 'timeSec'>;

/** Times from moment to moment, the latest of them → the longest. */
export function longestWait(notes: readonly Timed[]): number {
  const waits = notes
    .slice(-LATEST)
    .map(({ timeSec }, at, latest) => (at === 0 ? 0 : timeSec - latest[at - 1]!.timeSec));
  return Math.max(0, ...waits);
}

/** A wait, and the longest of those after it, seconds → whether the playing had stopped. */
function isStop(waitSec: number, longestSec: number): boolean {
  return waitSec > Math.max(STOP.sec, STOP.times * longestSec);
}

/** Notes, three of them surely struck → the first from which on the playing went on; what stands alone before may be a word. */
export function beginningOf(notes: readonly Timed[]): number {
  const times = notes.map(({ timeSec }) => timeSec).sort((a, b) => b - a);
  let first = times[0]!;
  let longest = 0;
  for (const time of times) {
    const wait = first - time;
    if (longest > 0 && isStop(wait, longest)) return first;
    if (wait > MOMENT_SEC) longest = Math.max(longest, wait);
    first = time;
  }
  return first;
}

/** Notes in order of time → whether the playing had stopped before that of `startSec`; before the first of all it had. */
export function hadStopped(notes: readonly Timed[], startSec: number): boolean {
  const first = notes.findIndex(({ timeSec }) => timeSec >= startSec);
  if (first <= 0) return true;
  const waitSec = notes[first]!.timeSec - notes[first - 1]!.timeSec;
  return isStop(waitSec, longestWait(notes.slice(first, first + LATEST)));
}
