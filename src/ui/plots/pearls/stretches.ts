import { sounded } from './pearls.ts';
import { LEAD_IN_SEC, RING_OUT_SEC, type PlayRange, type Spot } from './spots.ts';

/** A stretch of the exercise, both ends in it. */
export interface Stretch {
  readonly fromStep: number;
  readonly toStep: number;
}

/** Two steps in any order → the stretch between them. */
export function stretchBetween(a: number, b: number): Stretch {
  return { fromStep: Math.min(a, b), toStep: Math.max(a, b) };
}

/** Where to play to hear a stretch: from before its first note to before the note after its last, or until that has rung out. */
export function stretchRange(spots: readonly Spot[], { fromStep, toStep }: Stretch): PlayRange | null {
  const heard = spots.filter((spot) => spot.pearls.some(sounded));
  const inside = heard.filter((spot) => spot.step >= fromStep && spot.step <= toStep);
  const times = inside.flatMap((spot) => spot.pearls.filter(sounded).map((pearl) => pearl.timeSec));
  if (times.length === 0) return null;
  const [firstSec, lastSec] = [Math.min(...times), Math.max(...times)];
  const after = heard
    .filter((spot) => spot.step > toStep && spot.timeSec > lastSec)
    .map((spot) => spot.timeSec);
  return {
    fromSec: Math.max(0, firstSec - LEAD_IN_SEC),
    toSec: Math.min(lastSec + RING_OUT_SEC, ...after.map((sec) => sec - LEAD_IN_SEC / 2)),
  };
}

/** The whole of an attempt. */
export function wholeRange(spots: readonly Spot[]): PlayRange | null {
  const steps = spots.map((spot) => spot.step);
  if (steps.length === 0) return null;
  const range = stretchRange(spots, { fromStep: Math.min(...steps), toStep: Math.max(...steps) });
  return range === null ? null : { fromSec: Math.max(0, range.fromSec - 0.2), toSec: range.toSec + 0.8 };
}
