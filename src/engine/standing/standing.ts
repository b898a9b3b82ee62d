import type { ExerciseChoice } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { shortfalls } from './shortfalls.ts';
import type { Level, Practised, Shortfall, Standing } from './types.ts';

/**
 * The attempts at one exercise with the same hands, oldest first → where it stands.
 *
 * Ready: the last attempts, as many in a row as the criteria ask for (three), are at the criterion. Nearly: the last one is, or
 * misses it narrowly in one thing. The tempo that counts is the one aimed at last, where none is given. Common practice, no
 * source.
 *
 * `askedBpm`: the tempo that somebody asks for, beats a minute; null: any will do.
 */
export function standingOf(
  exercise: ExerciseChoice,
  attempts: readonly Practised[],
  criteria: Criteria,
  askedBpm?: number | null,
): Standing {
  const wanted = Math.max(1, criteria.readyInARow);
  const last = attempts.at(-1);
  if (last === undefined) {
    const nothing = { attempts: 0, inARow: 0, returns: 0, lastMs: null, targetBpm: askedBpm ?? null };
    return { exercise, level: 'new', shortfalls: [], wanted, ...nothing };
  }
  const targetBpm = askedBpm === undefined ? last.summary.targetBpm : askedBpm;
  const missed = shortfalls(last.summary, criteria, targetBpm);
  const inARow = rowAtCriterion(attempts, criteria, targetBpm);
  return {
    exercise,
    level: levelOf(inARow, wanted, missed),
    shortfalls: missed,
    attempts: attempts.length,
    inARow,
    returns: returnsIn(attempts.slice(attempts.length - inARow)),
    wanted,
    lastMs: last.whenMs,
    targetBpm,
  };
}

/** How many attempts, counted from the last, are at the criterion without a break. */
function rowAtCriterion(
  attempts: readonly Practised[],
  criteria: Criteria,
  targetBpm: number | null,
): number {
  const first = attempts.findLastIndex(({ summary }) => shortfalls(summary, criteria, targetBpm).length > 0);
  return attempts.length - 1 - first;
}

/** Left lying for so long and played again is a return, ms; common practice, no source. */
const RETURN_MS = 3.5 * 86_400_000;

/** Attempts, oldest first → how often it was returned to. */
function returnsIn(attempts: readonly Practised[]): number {
  return attempts.filter(({ whenMs }, index) => index > 0 && whenMs - attempts[index - 1]!.whenMs > RETURN_MS)
    .length;
}

function levelOf(inARow: number, wanted: number, missed: readonly Shortfall[]): Level {
  if (inARow >= wanted) return 'ready';
  if (inARow > 0) return 'nearly';
  return missed.length === 1 && missed[0]!.narrow ? 'nearly' : 'not-yet';
}
