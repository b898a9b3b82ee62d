import type { Candidate } from '../listen/index.ts';
import type { StepHeard } from './steps.ts';

/*
 * A step of which the blind ear reported nothing, and when it may have come: most likely, to find it again by few questions; or at all, to
 * tell that it was not struck, of which only the whole time between the notes beside it is evidence.
 *
 * In fast playing whole steps go unheard: at ten to fourteen notes a second a tone has two or three of the ear's frames to itself. The
 * closer look, whose sharp view steps by 6 ms, hears there as well as in slow playing, if only it is asked at the right moment (two
 * development pianos, 4960 notes of both hands at 8 to 14 steps a second: of 216 lost to the report 174 lay in steps, or beside notes,
 * about which it was not asked).
 */

/** In more steps in a row than these nothing was played, or nobody knows when. */
const MOST_IN_A_ROW = 3;
/** What the ear half heard of the step's keys counts so near to the moment expected, in steps. */
const NEAR_STEPS = 0.45;
/** half heard moments that are asked about, the likeliest first, and how far apart they lie at least, s */
const MOST_HALF_HEARD = 2;
const HALF_HEARD_APART_SEC = 0.012;
/** Looks at the whole time lie about so far apart, s, that a strike anywhere shows in one of them; and so far from the notes beside, s. */
const APART_SEC = 0.06;
const CLEAR_SEC = 0.04;
/** At an end there is a note to one side only: so many steps beyond it. */
const BEYOND_STEPS = 1.5;

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
    if (moments.every((other) => Math.abs(other - one.timeSec) > HALF_HEARD_APART_SEC))
      moments.push(one.timeSec);
  return moments;
}

/**
 * A step of which nothing was reported → moments that leave out none at which it may have come, s; none of a place that has no note
 * near it, or where the player went back.
 */
export function everyMoment(steps: readonly StepHeard[], step: number): readonly number[] {
  const time = timeAbout(steps, step);
  if (time === null) return [];
  const lengthSec = time.toSec - time.fromSec - 2 * CLEAR_SEC;
  const count = Math.max(0, Math.floor(lengthSec / APART_SEC) + 1);
  return Array.from(
    { length: count },
    (_, index) => time.fromSec + CLEAR_SEC + ((index + 0.5) * lengthSec) / count,
  );
}

/** From the note before a step to the one after, s; at an end, as far beyond the note as steps are long there. */
function timeAbout(
  steps: readonly StepHeard[],
  step: number,
): { readonly fromSec: number; readonly toSec: number } | null {
  const before = heardBeside(steps, step, -1);
  const after = heardBeside(steps, step, 1);
  if (before !== null && after !== null)
    return { fromSec: steps[before]!.timeSec!, toSec: steps[after]!.timeSec! };
  const end = before ?? after;
  if (end === null || Math.abs(end - step) > 1) return null;
  const next = steps[end + (before === null ? 1 : -1)]?.timeSec ?? null;
  if (next === null) return null;
  const endSec = steps[end]!.timeSec!;
  const beyondSec = endSec - BEYOND_STEPS * (next - endSec);
  return before === null ? { fromSec: beyondSec, toSec: endSec } : { fromSec: endSec, toSec: beyondSec };
}

/** The nearest step to one side of which something was heard; null: none within so many. */
function heardBeside(
  steps: readonly StepHeard[],
  step: number,
  way: -1 | 1,
  within = Infinity,
): number | null {
  for (let away = 1; away <= within && steps[step + way * away] !== undefined; away++)
    if (steps[step + way * away]!.timeSec !== null) return step + way * away;
  return null;
}

/** When a step is to be expected by those beside it, and how long a step lasts there, s; null where they tell nothing. */
function expectedAt(
  steps: readonly StepHeard[],
  beats: readonly number[],
  step: number,
): { readonly timeSec: number; readonly stepSec: number } | null {
  const before = heardBeside(steps, step, -1, MOST_IN_A_ROW);
  const after = heardBeside(steps, step, 1, MOST_IN_A_ROW);
  if (before !== null && after !== null && after - before > MOST_IN_A_ROW + 1) return null;
  const nearest = before ?? after;
  if (nearest === null) return null;
  // Only one side: the pace of the next two on it.
  const way = before === null ? 1 : -1;
  const other = before !== null && after !== null ? after : heardBeside(steps, nearest, way, MOST_IN_A_ROW);
  if (other === null) return null;
  const pace = (steps[other]!.timeSec! - steps[nearest]!.timeSec!) / (beats[other]! - beats[nearest]!);
  // A step played again or out of order tells no time.
  if (!(pace > 0)) return null;
  return {
    timeSec: steps[nearest]!.timeSec! + pace * (beats[step]! - beats[nearest]!),
    stepSec: Math.abs((steps[other]!.timeSec! - steps[nearest]!.timeSec!) / (other - nearest)),
  };
}
