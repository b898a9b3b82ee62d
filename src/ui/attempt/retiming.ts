import { lateCrossings, timelineOf } from '../../engine/index.ts';
import type { Exercise, Report, TimedStrike } from '../../engine/index.ts';
import { timeMap, type Attack } from '../../io/playback/index.ts';

/** A way to hear the recording: where each attack goes. */
export interface Version {
  readonly attacks: readonly Attack[];
}

/** How an attempt can be heard besides as it was played; null where there is nothing to be changed or not enough to go by. */
export interface Versions {
  /** as it was played: the attacks stay where they are, and are kept whole when it is played slower */
  readonly played: Version;
  /** each step on its even place, at the attempt's own tempo */
  readonly even: Version | null;
  /** as played, only without the delay of the late crossings */
  readonly crossings: Version | null;
}

/** An extra note this near to a step is struck with it, seconds: there is no room to move one without the other. */
const TOGETHER_SEC = 0.06;

/** Fewer strikes have no evenness to be heard. */
const FEWEST = 3;

/** A strike with what moves along with it. */
type Moving = TimedStrike & { readonly firstSec: number; readonly lastSec: number };

/** Report → the ways to hear its recording. What was struck together moves together, so chords and hands stay as they were. */
export function versionsOf(report: Report, exercise: Exercise): Versions {
  const extrasSec = report.notes.filter(({ verdict }) => verdict === 'extra').map(({ timeSec }) => timeSec);
  const strikes = timelineOf(report, exercise).strikes.map((strike): Moving => {
    const times = strike.notes.map(({ timeSec }) => timeSec);
    const near = extrasSec.filter((sec) => times.some((time) => Math.abs(time - sec) < TOGETHER_SEC));
    return { ...strike, firstSec: Math.min(...times, ...near), lastSec: Math.max(...times, ...near) };
  });
  const between = extrasSec.filter(
    (sec) => !strikes.some(({ firstSec, lastSec }) => sec >= firstSec && sec <= lastSec),
  );
  const lateSteps = new Set(lateCrossings(report).map(({ step }) => step));
  const version = (heardSec: readonly number[]): Version => ({ attacks: moved(strikes, between, heardSec) });
  return {
    played: version(strikes.map(({ timeSec }) => timeSec)),
    even: strikes.length < FEWEST ? null : version(strikes.map(({ evenSec }) => evenSec)),
    crossings: lateSteps.size === 0 ? null : version(withoutDelays(strikes, lateSteps)),
  };
}

/** Late crossings come on their ticks, and what follows earlier by the time that was lost there. */
function withoutDelays(strikes: readonly TimedStrike[], lateSteps: ReadonlySet<number>): readonly number[] {
  let earlierSec = 0;
  return strikes.map(({ step, timeSec, tickSec, lateSec, lostSec }) => {
    if (!lateSteps.has(step) || lateSec <= 0) return timeSec - earlierSec;
    const heardSec = tickSec - earlierSec;
    earlierSec += lostSec;
    return heardSec;
  });
}

/** Steps and the extra notes between them → attacks, with `heardSec` the new mean onset of each step. */
function moved(
  strikes: readonly Moving[],
  extrasSec: readonly number[],
  heardSec: readonly number[],
): readonly Attack[] {
  const steps = strikes.map(({ firstSec, lastSec, timeSec }, index) => ({
    fromSec: firstSec,
    lastSec,
    toSec: firstSec + heardSec[index]! - timeSec,
  }));
  const { toHeard } = timeMap(steps);
  const extras = extrasSec.map((fromSec) => ({ fromSec, lastSec: fromSec, toSec: toHeard(fromSec) }));
  return [...steps, ...extras].sort((a, b) => a.fromSec - b.fromSec);
}
