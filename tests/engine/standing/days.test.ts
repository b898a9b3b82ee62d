import { describe, expect, it } from 'vitest';
import { dayOf, daysOf } from '../../../src/engine/standing/days.ts';
import { DAY_MS, summary } from './history.ts';

const SCALE = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 } as const;
const at = (whenMs: number, day?: number) => ({
  whenMs,
  summary: summary(SCALE),
  ...(day !== undefined && { day }),
});

describe('the day of an attempt', () => {
  it.each([
    ['at midnight', 3 * DAY_MS, 3],
    ['a moment before', 3 * DAY_MS - 1, 2],
    ['at noon', 3.5 * DAY_MS, 3],
  ])('is that of UTC, from midnight to midnight, where no other is known: %s', (_, whenMs, day) => {
    expect(dayOf(at(whenMs))).toBe(day);
  });

  it('is that of the calendar where it was played, if that is known', () => {
    expect(dayOf(at(3 * DAY_MS - 1, 3))).toBe(3);
    expect(daysOf([at(2.9 * DAY_MS, 3), at(3.1 * DAY_MS), at(4.5 * DAY_MS)])).toBe(2);
  });
});
