import type { Touch } from '../../exercise/index.ts';
import type { Estimate } from '../types.ts';

/**
 * Of the time to the next note a short note leaves so much silent: staccato some 60 %, notes simply detached some 25 % (Bresin & Battel
 * 2000, memory), so that between them lie these; a gap under a tenth is not heard as one.
 */
const SHORT_SHARE = 0.4;
const APART_SHARE = 0.1;

/** Something against a bound: it is so, surely not so, or that cannot be told. */
export type Outcome = 'so' | 'not-so' | 'untold';

/** What was to lie over a bound: it does, surely it does not, or that cannot be told. */
export function outcomeOf({ value, plusMinus = 0 }: Estimate, bound: number, sureBy: number): Outcome {
  if (value >= bound) return 'so';
  return value + sureBy * plusMinus < bound ? 'not-so' : 'untold';
}

/** The overlap (+) or gap (−) that was heard from key to key, ms, against the usual time from note to note → whether it is the touch meant. */
export function touchOutcome(meant: Touch, overlapMs: Estimate, ioiMs: number, sureBy: number): Outcome {
  if (meant === 'legato') return outcomeOf(overlapMs, -APART_SHARE * ioiMs, sureBy);
  const gapMs = { ...overlapMs, value: -overlapMs.value };
  return outcomeOf(gapMs, (meant === 'staccato' ? SHORT_SHARE : APART_SHARE) * ioiMs, sureBy);
}
