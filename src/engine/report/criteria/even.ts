import { justNoticeableMs } from './audible.ts';
import type { Criteria } from './index.ts';

/**
 * What is just noticed of an interval's displacement is 6 ms in fast sequences and 2.5 % of slow ones (Friberg & Sundberg 1995);
 * between them this bends smoothly. As a share of the interval.
 */
function noticedShare(stepMs: number): number {
  return Math.hypot(justNoticeableMs(0), justNoticeableMs(1000) * (stepMs / 1000)) / stepMs;
}

/**
 * Criteria → the same with the bounds of evenness as they are for steps of so many ms: always as many times what is just noticed
 * there. `stepMs` null: not known, so the bounds stay.
 *
 * By default 1.6 times: 4.3 % (28 ms) at 1.5 notes a second, 5.6 % at four, 8 % (11 ms) at seven, 11 to 14 % at ten to fourteen.
 * Trained pianists' scales vary by 8 to 10 ms at seven notes a second or five (memory, medium confidence), and tapping by 2 to
 * 4 % of slow intervals beside some 10 ms of the hand's own (Wing & Kristofferson 1973; Repp 2005; both memory): one fixed share
 * lets 30 ms pass at slow tempi and refuses 6 ms at fast ones.
 */
export function evenAt(criteria: Criteria, stepMs: number | null): Criteria {
  const { evennessPercent, unevenPercent, evennessStepMs } = criteria;
  if (evennessStepMs === null || stepMs === null) return criteria;
  const times = noticedShare(stepMs) / noticedShare(evennessStepMs);
  return {
    ...criteria,
    evennessPercent: evennessPercent * times,
    unevenPercent: unevenPercent * times,
    evennessStepMs: stepMs,
  };
}
