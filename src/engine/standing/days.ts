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
