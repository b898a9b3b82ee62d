const DAY_MS = 86_400_000;

/** A moment, ms since 1970 → the day of the calendar on which it is here, counted from 1970. */
export function dayOf(whenMs: number): number {
  // A day with a change of the clock is an hour longer or shorter.
  return Math.round(new Date(whenMs).setHours(0, 0, 0, 0) / DAY_MS);
}
