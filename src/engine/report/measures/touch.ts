import { median } from '../../base/statistics.ts';
import { notMeasured } from './estimate.ts';
import type { Estimate, Figure } from '../types.ts';
import type { Interval, Strike } from './strikes.ts';
import { sideOf } from './sure.ts';

/** The overlap (+) or gap (−) from one step to the next of a hand, ms. */
export interface Join {
  readonly step: number;
  readonly overlapMs: number;
}

/**
 * Strikes of one hand → overlaps with the next step, from the damping of the earlier notes. Only over unbroken `intervals`;
 * steps whose damping was not heard are left out.
 */
export function joinsOf(strikes: readonly Strike[], intervals: readonly Interval[]): readonly Join[] {
  const unbroken = new Set(intervals.map((interval) => interval.step));
  return strikes.slice(1).flatMap((strike, index): Join[] => {
    const before = strikes[index]!;
    if (!unbroken.has(strike.step)) return [];
    const releases = before.notes.map((key) => key.played.releaseSec);
    if (releases.some((release) => release === null)) return [];
    const last = Math.max(...releases.map((release) => release ?? 0));
    const first = Math.min(...strike.notes.map((key) => key.played.timeSec));
    return [{ step: strike.step, overlapMs: 1000 * (last - first) }];
  });
}

/**
 * Dampers take 50 to 300 ms, and when within that a string is heard to be damped differs from piano to piano and room to room:
 * half of the medians of 37 rendered attempts of the development piano lay over 20 ms off, to one side as a whole.
 */
const DAMPING_SD_MS = 30;

/**
 * Touch: median overlap (+, legato) or gap (−, detached) between consecutive notes of one hand, ms. ± of the median from the
 * scatter, and from what is not known of the dampers: too much to tell connected from detached, so that nothing is said of it. None
 * where the pedal was held, which keeps every damper off.
 */
export function touchMs(joins: readonly Join[], strikes: readonly Strike[], pedalHeld: boolean): Figure {
  if (pedalHeld) return notMeasured({ notice: 'pedal-held' });
  if (joins.length < Math.max(3, (strikes.length - 1) / 2))
    return notMeasured({ notice: 'damping-not-heard', of: 'notes' });
  const values = joins.map((join) => join.overlapMs);
  const middle = median(values)!;
  const away = median(values.map((value) => Math.abs(value - middle)))!;
  const chanceMs = (1.4826 * away * Math.sqrt(Math.PI / 2)) / Math.sqrt(values.length);
  return { value: middle, plusMinus: Math.hypot(chanceMs, DAMPING_SD_MS) };
}

/** Figure of touch, ms → what it surely is; null: it may be either. */
export function touchHeard(touch: Estimate): 'connected' | 'detached' | null {
  const side = sideOf(touch);
  return side === 0 ? null : side > 0 ? 'connected' : 'detached';
}
