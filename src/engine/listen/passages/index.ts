import type { Passage } from '../types.ts';

export interface PassageOptions {
  /** a pause of so long parts two passages, seconds */
  readonly pauseSec: number;
  /** or so many times the usual interval, if that is longer */
  readonly pauseIntervals: number;
  /** a passage ends so long after its last onset, seconds */
  readonly tailSec: number;
}

/** Common practice, no source: who pauses longer than this has stopped. */
export const PASSAGE_DEFAULTS: PassageOptions = { pauseSec: 2.5, pauseIntervals: 3, tailSec: 1 };

/** Onsets in order, seconds → playing between pauses. */
export function findPassages(
  onsetsSec: readonly number[],
  durationSec: number,
  options: Partial<PassageOptions> = {},
): Passage[] {
  const { pauseSec, pauseIntervals, tailSec } = { ...PASSAGE_DEFAULTS, ...options };
  if (onsetsSec.length === 0) return [];
  const gaps = onsetsSec.slice(1).map((time, i) => time - onsetsSec[i]!);
  const usual = [...gaps].sort((a, b) => a - b)[gaps.length >> 1] ?? 0;
  const pause = Math.max(pauseSec, pauseIntervals * usual);
  const passages: Passage[] = [];
  let start = onsetsSec[0]!;
  onsetsSec.forEach((time, i) => {
    const next = onsetsSec[i + 1];
    if (next !== undefined && next - time <= pause) return;
    passages.push({ startSec: start, endSec: Math.min(durationSec, time + tailSec, next ?? Infinity) });
    if (next !== undefined) start = next;
  });
  return passages;
}
