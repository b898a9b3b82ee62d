import type { ExerciseChoice } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { dayOf, daysOf } from './days.ts';
import { shortfalls } from './shortfalls.ts';
import type { AttemptSummary, Level, Practised, Shortfall, Standing } from './types.ts';

/** Left lying for so long and played again is a return, ms; common practice, no source. */
const RETURN_MS = 3.5 * 86_400_000;
/** Faster by over this share than it has to be is a try at more, which takes nothing away; common practice, no source. */
const FASTER_SHARE = 0.1;
/** First tries of so many days say how it goes from cold; common practice, no source. */
const COLD_DAYS = 5;

/**
 * The attempts at one exercise with the same hands, oldest first → where it stands.
 *
 * Ready: the last attempts, as many in a row as the criteria ask for (three), are at the criterion, at the least tempo or faster,
 * and lie on as many days (two), so that the first try of a day is among them. Nearly: the last one is, or misses it narrowly in
 * one thing. A try at a clearly faster tempo that goes wrong counts neither way. Common practice, no source.
 *
 * `tempi`: least tempi asked for, one level after the other, each faster, beats a minute; it is judged by the fastest at which it
 * is ready, else by the first. Empty: any tempo will do.
 */
export function standingOf(
  exercise: ExerciseChoice,
  attempts: readonly Practised[],
  criteria: Criteria,
  tempi: readonly number[] = [],
): Standing {
  const wanted = Math.max(1, criteria.readyInARow);
  const wantedDays = Math.max(1, criteria.readyDays);
  const { leastBpm, row } = judged(attempts, criteria, tempi);
  const ready = isReady(row, criteria);
  const last = attempts.at(-1);
  const missed = last === undefined || row.length > 0 ? [] : shortfalls(last.summary, criteria, leastBpm);
  return {
    exercise,
    level: last === undefined ? 'new' : levelOf(ready, row.length, missed),
    shortfalls: missed,
    attempts: attempts.length,
    inARow: row.length,
    days: daysOf(row),
    returns: returnsIn(row),
    wanted,
    wantedDays,
    lastMs: last?.whenMs ?? null,
    targetBpm: last?.summary.targetBpm ?? null,
    leastBpm,
    nextBpm: (ready ? tempi.find((bpm) => bpm > (leastBpm ?? 0)) : undefined) ?? null,
    cold: coldTries(attempts, criteria, leastBpm),
    waitsFor: [],
  };
}

/** Whether it was ready at any time, by the first tempo that is asked. */
export function wasReady(
  attempts: readonly Practised[],
  criteria: Criteria,
  [leastBpm = null]: readonly (number | null)[],
): boolean {
  let row: Practised[] = [];
  return attempts.some((attempt) => {
    if (shortfalls(attempt.summary, criteria, leastBpm).length === 0) row.push(attempt);
    else if (!isFaster(attempt.summary, leastBpm)) row = [];
    return isReady(row, criteria);
  });
}

/** As many attempts, on as many days, as make it ready. */
export function isReady(row: readonly Practised[], { readyInARow, readyDays }: Criteria): boolean {
  return row.length >= Math.max(1, readyInARow) && daysOf(row) >= Math.max(1, readyDays);
}

interface Judged {
  readonly leastBpm: number | null;
  /** attempts at the criterion without a break, the last one included, oldest first */
  readonly row: readonly Practised[];
}

function judged(attempts: readonly Practised[], criteria: Criteria, tempi: readonly number[]): Judged {
  const at = (leastBpm: number | null): Judged => ({ leastBpm, row: rowAt(attempts, criteria, leastBpm) });
  const first = at(tempi[0] ?? null);
  if (!isReady(first.row, criteria)) return first;
  return (
    tempi
      .slice(1)
      .map(at)
      .findLast(({ row }) => isReady(row, criteria)) ?? first
  );
}

function rowAt(
  attempts: readonly Practised[],
  criteria: Criteria,
  leastBpm: number | null,
): readonly Practised[] {
  const row: Practised[] = [];
  for (const attempt of attempts.toReversed()) {
    if (shortfalls(attempt.summary, criteria, leastBpm).length === 0) row.unshift(attempt);
    else if (!isFaster(attempt.summary, leastBpm)) break;
  }
  return row;
}

function isFaster({ tempoBpm }: AttemptSummary, leastBpm: number | null): boolean {
  return leastBpm !== null && tempoBpm !== null && tempoBpm > leastBpm * (1 + FASTER_SHARE);
}

/** The first try of each of the last days: how many there were, and how many were at the criterion. */
function coldTries(
  attempts: readonly Practised[],
  criteria: Criteria,
  leastBpm: number | null,
): Standing['cold'] {
  const firsts: Practised[] = [];
  for (let at = attempts.length - 1; at >= 0 && firsts.length < COLD_DAYS; at -= 1) {
    const before = attempts[at - 1];
    if (before === undefined || dayOf(before) !== dayOf(attempts[at]!)) firsts.push(attempts[at]!);
  }
  const right = firsts.filter(({ summary }) => shortfalls(summary, criteria, leastBpm).length === 0);
  return { days: firsts.length, right: right.length };
}

/** Attempts, oldest first → how often it was returned to. */
function returnsIn(attempts: readonly Practised[]): number {
  return attempts.filter(({ whenMs }, index) => index > 0 && whenMs - attempts[index - 1]!.whenMs > RETURN_MS)
    .length;
}

function levelOf(ready: boolean, inARow: number, missed: readonly Shortfall[]): Level {
  if (ready) return 'ready';
  if (inARow > 0) return 'nearly';
  return missed.length === 1 && missed[0]!.narrow ? 'nearly' : 'not-yet';
}
