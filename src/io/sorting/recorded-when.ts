/** Year, month, day, and perhaps hour, minute, second: 20261101_174502, 2026-11-01 at 17.45.02, 2026-11-01. */
const YEAR_FIRST =
  /(?<!\d)(20\d\d)([-._]?)(0[1-9]|1[0-2])\2(0[1-9]|[12]\d|3[01])(?:\s+at\s+|[-_ T])?(?:([01]\d|2[0-3])([-.:h]?)([0-5]\d)(?:\6([0-5]\d))?)?(?!\d)/i;
/** Day first, as much of Europe writes it: 1.11.2026, 01-11-2026. Where the month comes first nobody can tell, so it is not tried. */
const DAY_FIRST = /(?<!\d)(0?[1-9]|[12]\d|3[01])\.(0?[1-9]|1[0-2])\.(20\d\d)(?!\d)/;

/** A file's name → when it was recorded as its name has it, ms since 1970 in local time; null where it says nothing. */
export function recordedWhen(name: string): number | null {
  const first = YEAR_FIRST.exec(name);
  if (first !== null) {
    const [, year, , month, day, hour = '0', , minute = '0', second = '0'] = first;
    return moment([year, month, day, hour, minute, second].map(Number));
  }
  const last = DAY_FIRST.exec(name);
  return last === null ? null : moment([last[3], last[2], last[1], 0, 0, 0].map(Number));
}

/** A day that the calendar has (no 31 June) → ms. */
function moment([year, month, day, hour, minute, second]: readonly number[]): number | null {
  const date = new Date(year!, month! - 1, day, hour, minute, second);
  return date.getMonth() === month! - 1 ? date.getTime() : null;
}
