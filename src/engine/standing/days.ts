import { median } from '../base/statistics.ts';
import type { Practised } from './types.ts';

const DAY_MS = 86_400_000;

/** The day on which it was played: of the calendar there, else by UTC; counted from 1970. */
export function dayOf({ whenMs, day }: Practised): number {
  return day ?? Math.floor(whenMs / DAY_MS);
}

/** Attempts → on how many days they were played. */
export function daysOf(attempts: readonly Practised[]): number {
  return new Set(attempts.map(dayOf)).size;
}

/** So many days of late are looked at, and so many are enough to say something; common practice, no source. */
const DAYS = { most: 5, least: 3 } as const;

/** The first try of a day against the best one. */
interface ColdAgainstBest {
  /** days on which there was more than one try */
  readonly days: number;
  /** the middle one of these days: variation of the time, per cent */
  readonly coldPercent: number;
  readonly bestPercent: number;
}

/** The attempts at one exercise, oldest first → how even the first of a day is, and the best; null: too few days to say. */
export function coldAgainstBest(attempts: readonly Practised[]): ColdAgainstBest | null {
  const byDay = new Map<number, number[]>();
  for (const attempt of attempts) {
    const { evennessPercent } = attempt.summary;
    if (evennessPercent === null) continue;
    byDay.set(dayOf(attempt), [...(byDay.get(dayOf(attempt)) ?? []), evennessPercent]);
  }
  const days = [...byDay.values()].filter(({ length }) => length > 1).slice(-DAYS.most);
  if (days.length < DAYS.least) return null;
  return {
    days: days.length,
    coldPercent: median(days.map(([first]) => first!))!,
    bestPercent: median(days.map((day) => Math.min(...day)))!,
  };
}
