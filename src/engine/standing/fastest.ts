import type { Criteria } from '../report/index.ts';
import { shortfalls } from './shortfalls.ts';
import type { Practised } from './types.ts';

/** A try that failed before this long before the fastest that did not says nothing about now, ms; common practice, no source. */
const STILL_SO_MS = 7 * 86_400_000;

/** The fastest tempo still even: where the border lies between what goes and what does not. */
export interface Fastest {
  /** beats a minute */
  readonly bpm: number;
  /** half the way from the fastest attempt that was right and even to the slowest faster one that was not; null: nothing faster was tried, so it is `bpm` at least */
  readonly plusMinus: number | null;
  /** each attempt that was faster than all before it, right and even too; oldest first */
  readonly history: readonly { readonly whenMs: number; readonly bpm: number }[];
}

/**
 * The attempts at one exercise, oldest first, at any tempo → the fastest tempo that is still even; null where none was right and
 * even. The border is known no better than to lie between two attempts, so its ± is half the way between them.
 */
export function fastestEven(attempts: readonly Practised[], criteria: Criteria): Fastest | null {
  const history: { readonly whenMs: number; readonly bpm: number }[] = [];
  for (const { whenMs, summary } of attempts) {
    const bpm = summary.tempoBpm;
    if (bpm === null || bpm <= (history.at(-1)?.bpm ?? 0)) continue;
    if (shortfalls(summary, criteria, null).length === 0) history.push({ whenMs, bpm });
  }
  const best = history.at(-1);
  if (best === undefined) return null;
  const failed = attempts.flatMap(({ whenMs, summary: { tempoBpm } }) =>
    tempoBpm !== null && tempoBpm > best.bpm && whenMs >= best.whenMs - STILL_SO_MS ? [tempoBpm] : [],
  );
  if (failed.length === 0) return { bpm: best.bpm, plusMinus: null, history };
  const half = (Math.min(...failed) - best.bpm) / 2;
  return { bpm: best.bpm + half, plusMinus: half, history };
}
