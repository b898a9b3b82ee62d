import type { Candidate } from '../listen/index.ts';
import type { StepHeard } from './steps.ts';

/*
 * A step of which the blind ear reported nothing, and when to look for it. In fast playing that happens to whole steps: at ten to fourteen
 * notes a second a tone has two or three of its frames to itself. The closer look, whose sharp view steps by 6 ms, hears there as well
 * as in slow playing, if only it is asked at the right moment (two development pianos, 4960 notes of both hands at 8 to 14 steps a second: of
 * 216 lost to the report 174 lay in steps, or beside notes, about which it was not asked).
 */

/** In more steps in a row than these nothing was played, or nobody knows when. */
const MOST_IN_A_ROW = 3;
/** What the ear half heard of the step's keys counts so near to the moment expected, in steps. */
const NEAR_STEPS = 0.45;
/** half heard moments that are asked about, the likeliest first, and how far apart they lie at least, s */
const MOST_HALF_HEARD = 2;
const APART_SEC = 0.012;

/**
 * A step of which nothing was reported → when it may have come, s: where the ear half heard one of its keys, and evenly between the
 * steps beside it; before the first and after the last at the pace of the steps beside. `beats`: where each step is written.
 */
export function likelyMoments(
  steps: readonly StepHeard[],
  beats: readonly number[],
  step: number,
  candidates: readonly Candidate[],
): readonly number[] {
  const expected = expectedAt(steps, beats, step);
  if (expected === null) return [];
  const { timeSec, stepSec } = expected;
  const { written } = steps[step]!;
  const halfHeard = candidates
    .filter((one) => written.includes(one.midi) && Math.abs(one.timeSec - timeSec) < NEAR_STEPS * stepSec)
    .sort((a, b) => b.probability - a.probability)
    .slice(0, MOST_HALF_HEARD);
  const moments = [timeSec];
  for (const one of halfHeard)
    if (moments.every((other) => Math.abs(other - one.timeSec) > APART_SEC)) moments.push(one.timeSec);
  return moments;
}

/** When a step is to be expected by those beside it, and how long a step lasts there, s; null where they tell nothing. */
function expectedAt(
  steps: readonly StepHeard[],
  beats: readonly number[],
  step: number,
): { readonly timeSec: number; readonly stepSec: number } | null {
  const heard = (from: number, way: -1 | 1, within: number): number | null => {
    for (let away = 1; away <= within; away++)
      if ((steps[from + way * away]?.timeSec ?? null) !== null) return from + way * away;
    return null;
  };
  const before = heard(step, -1, MOST_IN_A_ROW);
  const after = heard(step, 1, MOST_IN_A_ROW);
  if (before !== null && after !== null && after - before > MOST_IN_A_ROW + 1) return null;
  const nearest = before ?? after;
  if (nearest === null) return null;
  // Only one side: the pace of the next two on it.
  const way = before === null ? 1 : -1;
  const other = before !== null && after !== null ? after : heard(nearest, way, MOST_IN_A_ROW);
  if (other === null) return null;
  const pace = (steps[other]!.timeSec! - steps[nearest]!.timeSec!) / (beats[other]! - beats[nearest]!);
  // A step played again or out of order tells no time.
  if (!(pace > 0)) return null;
  return {
    timeSec: steps[nearest]!.timeSec! + pace * (beats[step]! - beats[nearest]!),
    stepSec: Math.abs((steps[other]!.timeSec! - steps[nearest]!.timeSec!) / (other - nearest)),
  };
}
