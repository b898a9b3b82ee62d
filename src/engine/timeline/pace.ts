import { median } from '../base/statistics.ts';
import type { Exercise } from '../exercise/index.ts';
import { unbrokenOf, type Strike } from './strikes.ts';

/** A silence of so many beats more than was due is a stop. Common practice, no source. */
export const STOP_BEATS = 3;

/** The pace at a place is that of so many ways about it: some six on either side, the length of one octave. */
const NEAREST = 12;
/** A line needs so many; of fewer the median is taken. */
const FEWEST_FOR_LINE = 6;
/** A pace is told of ways without a crossing where there are so many; else of all. */
const FEWEST_PLAIN = 3;

/** The way from one strike to the next. */
export interface Way {
  readonly beats: number;
  readonly gapSec: number;
  /** seconds a beat that are usual about here */
  readonly paceSec: number;
  /** how the later strike follows on the earlier: in its pulse, after a stop, or gone back for */
  readonly follows: 'on' | 'stopped' | 'anew';
}

/** Strikes → seconds of a usual beat: the median over the unbroken ways between steps, stops and all; null where there is none. */
export function usualBeatSec(strikes: readonly Strike[]): number | null {
  const whole = unbrokenOf(strikes).map(
    ({ from, to }) => (to.timeSec - from.timeSec) / (to.beat - from.beat),
  );
  if (whole.length > 0) return median(whole)!;
  const over = strikes.slice(1).flatMap((to, at) => {
    const from = strikes[at]!;
    return to.anew || to.timeSec <= from.timeSec ? [] : [(to.timeSec - from.timeSec) / (to.beat - from.beat)];
  });
  return median(over) ?? null;
}

/**
 * Strikes in order of time → the ways between them, each with the pace that is usual about it: a straight line through the
 * seconds a beat of the nearest ways, so that a drift or a change of tempo is followed. It is laid by repeated medians
 * (Siegel 1982), which up to half of the ways, late ones, do not tilt. Ways into a crossing are left out where there are
 * others: if they are late, they are all late to the same side.
 */
export function waysOf(strikes: readonly Strike[], exercise: Exercise): readonly Way[] {
  const usualSec = usualBeatSec(strikes);
  if (usualSec === null) return [];
  let playedBeats = 0;
  const ways = strikes.slice(1).map((to, at) => {
    const from = strikes[at]!;
    const beats = to.beat - from.beat;
    const gapSec = to.timeSec - from.timeSec;
    const stopped = gapSec - beats * usualSec > STOP_BEATS * usualSec;
    const follows = to.anew ? 'anew' : stopped ? 'stopped' : 'on';
    if (follows === 'on') playedBeats += beats;
    const plain = exercise.steps
      .slice(from.step + 1, to.step + 1)
      .every((step) => step.crossings.length === 0);
    return { at, beats, gapSec, follows, plain, atBeat: playedBeats - beats / 2 } as const;
  });
  const on = ways.filter((way) => way.follows === 'on');
  const plain = on.filter((way) => way.plain);
  const told = plain.length >= FEWEST_PLAIN ? plain : on;
  let first = 0;
  let line = lineOf(told.slice(0, NEAREST));
  return ways.map(({ at, atBeat, beats, gapSec, follows }) => {
    const before = first;
    // The nearest lie beside each other; of two as near the earlier one.
    while (first + NEAREST < told.length && told[first + NEAREST]!.at - at < at - told[first]!.at) first++;
    if (first !== before) line = lineOf(told.slice(first, first + NEAREST));
    return { beats, gapSec, follows, paceSec: line?.(atBeat) ?? usualSec };
  });
}

/** Some ways → seconds a beat at any beat: the line of repeated medians through theirs; of few ways their median; null of none. */
function lineOf(
  ways: readonly { readonly atBeat: number; readonly gapSec: number; readonly beats: number }[],
): ((atBeat: number) => number) | null {
  const points = ways.map(({ atBeat, gapSec, beats }) => ({ x: atBeat, y: gapSec / beats }));
  const middle = median(points.map(({ y }) => y));
  if (middle === undefined) return null;
  if (points.length < FEWEST_FOR_LINE) return () => middle;
  const slope = median(points.map((one) => median(slopesFrom(one, points))!))!;
  const atZero = median(points.map(({ x, y }) => y - slope * x))!;
  // Beyond this no line is a tempo any more.
  return (atBeat) => Math.min(Math.max(atZero + slope * atBeat, middle / 2), middle * 2);
}

interface Point {
  readonly x: number;
  readonly y: number;
}

function slopesFrom(one: Point, points: readonly Point[]): readonly number[] {
  const slopes: number[] = [];
  for (const other of points) if (other.x !== one.x) slopes.push((other.y - one.y) / (other.x - one.x));
  return slopes;
}
