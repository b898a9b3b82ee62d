/** Taps further apart than this begin anew, ms: slower than the slowest tempo that may be aimed at (30 a minute). */
const ANEW_MS = 2100;
/** A tempo is told from this many of the last taps. */
const MOST_TAPS = 8;

/** Tapping a tempo: the taps that count, with one more at `nowMs`. */
export function tapped(tapsMs: readonly number[], nowMs: number): readonly number[] {
  const last = tapsMs.at(-1);
  if (last === undefined || nowMs - last > ANEW_MS || nowMs <= last) return [nowMs];
  return [...tapsMs, nowMs].slice(-MOST_TAPS);
}

/** Taps → beats a minute, by their median interval, so that one clumsy tap does no harm; null of fewer than three. */
export function tappedBpm(tapsMs: readonly number[]): number | null {
  if (tapsMs.length < 3) return null;
  const intervals = tapsMs
    .slice(1)
    .map((atMs, index) => atMs - tapsMs[index]!)
    .sort((a, b) => a - b);
  const middle = intervals.length / 2;
  const median = (intervals[Math.ceil(middle) - 1]! + intervals[Math.floor(middle)]!) / 2;
  return Math.round(60_000 / median);
}
