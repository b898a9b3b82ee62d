import { median } from '../../base/statistics.ts';
import type { Exercise } from '../../exercise/index.ts';
import type { IndexedNote } from './notes.ts';
import { BOUNDS } from '../costs/index.ts';

/** How long a beat lasts at a time of the attempt, seconds. */
export type BeatSec = (timeSec: number) => number;

/** Beats from one step to the next, as most steps of the exercise have it. */
export function beatsPerStep(exercise: Exercise): number {
  const steps = exercise.steps;
  return median(steps.slice(1).map((step, index) => step.beat - steps[index]!.beat)) ?? 1;
}

/**
 * A first guess at the beat, s: notes closer than a chord's spread count as one stroke; the median time from stroke to
 * stroke is one step. Half a second where there are no two strokes.
 */
export function guessBeatSec(struck: readonly IndexedNote[], exercise: Exercise): number {
  const apartSec = playsChords(exercise) ? BOUNDS.chordStrokeSec : BOUNDS.strokeSec;
  const strokes: number[] = [];
  for (const note of struck)
    if (strokes.length === 0 || note.timeSec - strokes.at(-1)! > apartSec) strokes.push(note.timeSec);
  const gaps = strokes.slice(1).map((timeSec, index) => timeSec - strokes[index]!);
  const stepSec = median(gaps);
  return stepSec === undefined ? 0.5 : stepSec / beatsPerStep(exercise);
}

/** Whether a hand has several keys to strike at once. */
export function playsChords({ steps }: Exercise): boolean {
  const hands = ['left', 'right'] as const;
  return steps.some(({ notes }) =>
    hands.some((hand) => notes.filter((note) => note.hand === hand).length > 1),
  );
}

/** The beat if the notes are the exercise once, from first to last, s. */
export function spanBeatSec(struck: readonly IndexedNote[], { steps }: Exercise): number {
  const beats = steps.at(-1)!.beat - steps[0]!.beat;
  const spanSec = (struck.at(-1)?.timeSec ?? 0) - (struck[0]?.timeSec ?? 0);
  return beats > 0 && spanSec > 0 ? spanSec / beats : 0.5;
}

/** A step known to have been played at a time. */
export interface Anchor {
  readonly timeSec: number;
  readonly beat: number;
}

/** How many neighbouring intervals a local beat is the median of. */
const NEIGHBOURS = 7;

/**
 * The local beat: at any time, the median seconds per beat of the nearest anchored interval and the three on each side of
 * it, held within half and double the median of all, so that one stop or one slip does not bend it. Falls back on the
 * first guess where there are fewer than three intervals.
 */
export function localBeatSec(runs: readonly (readonly Anchor[])[], guessSec: number): BeatSec {
  const spans = runs
    .flatMap((anchors) =>
      anchors.slice(1).flatMap((anchor, index) => {
        const before = anchors[index]!;
        const beats = anchor.beat - before.beat;
        return beats > 0
          ? [{ atSec: (anchor.timeSec + before.timeSec) / 2, sec: (anchor.timeSec - before.timeSec) / beats }]
          : [];
      }),
    )
    .sort((a, b) => a.atSec - b.atSec);
  const middle = median(spans.map((span) => span.sec));
  if (middle === undefined || middle <= 0 || spans.length < 3) return () => guessSec;
  const local = spans.map((_, index) => {
    const from = Math.max(0, Math.min(index - (NEIGHBOURS - 1) / 2, spans.length - NEIGHBOURS));
    const near = spans.slice(from, from + NEIGHBOURS).map((span) => span.sec);
    return Math.min(Math.max(median(near)!, middle / 2), middle * 2);
  });
  return (timeSec) => {
    const after = spans.findIndex((span) => span.atSec >= timeSec);
    if (after <= 0) return after === 0 ? local[0]! : local.at(-1)!;
    const nearer = spans[after]!.atSec - timeSec < timeSec - spans[after - 1]!.atSec ? after : after - 1;
    return local[nearer]!;
  };
}
