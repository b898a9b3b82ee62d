/** Two moments that belong together: `fromSec` of the recording is heard at `toSec`. */
export interface Anchor {
  readonly fromSec: number;
  readonly toSec: number;
}

/** Notes struck as one: the first of them is heard at `toSec`, the others keep their distance. */
export interface Attack extends Anchor {
  /** the last of them, seconds of the recording; `fromSec` where there is only one */
  readonly lastSec: number;
}

/** What is to be heard when. */
export interface Retiming {
  /** The sound around each is laid down as it is, to the sample; only what lies between is made longer or shorter. */
  readonly attacks: readonly Attack[];
  /** heard length, seconds */
  readonly lengthSec: number;
  /** speed before the first and after the last attack; 1 as recorded */
  readonly speed: number;
}

/** Recording time ↔ heard time, straight between anchors and at the recording's own rate beyond the outer ones. */
export interface TimeMap {
  readonly toHeard: (fromSec: number) => number;
  readonly toRecording: (toSec: number) => number;
}

/**
 * Anchors → a map that never goes back. Anchors are put in order of `fromSec`; one whose `toSec` does not come after the
 * one before it is left out. No anchors: the recording as it is.
 */
export function timeMap(anchors: readonly Anchor[]): TimeMap {
  const ordered = inOrder(anchors);
  return {
    toHeard: (fromSec) => between(ordered, fromSec, 'fromSec', 'toSec'),
    toRecording: (toSec) => between(ordered, toSec, 'toSec', 'fromSec'),
  };
}

/** Anchors by time, without those that would make time stand still or go back. */
export function inOrder(anchors: readonly Anchor[]): readonly Anchor[] {
  const kept: Anchor[] = [];
  for (const anchor of [...anchors].sort((a, b) => a.fromSec - b.fromSec)) {
    const last = kept.at(-1);
    if (last === undefined || (anchor.fromSec > last.fromSec && anchor.toSec > last.toSec)) kept.push(anchor);
  }
  return kept;
}

function between(
  anchors: readonly Anchor[],
  at: number,
  given: 'fromSec' | 'toSec',
  wanted: 'fromSec' | 'toSec',
): number {
  const first = anchors[0];
  const last = anchors.at(-1);
  if (first === undefined || last === undefined) return at;
  if (at <= first[given]) return first[wanted] + at - first[given];
  if (at >= last[given]) return last[wanted] + at - last[given];
  const next = anchors.findIndex((anchor) => anchor[given] > at);
  const [a, b] = [anchors[next - 1]!, anchors[next]!];
  return a[wanted] + ((at - a[given]) * (b[wanted] - a[wanted])) / (b[given] - a[given]);
}
