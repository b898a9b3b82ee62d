import type { ExerciseChoice } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { inWords } from './counts.ts';
import { shortfalls } from './shortfalls.ts';
import type { Level, Practised, Shortfall, Standing } from './types.ts';

/**
 * The attempts at one exercise with the same hands, oldest first → where it stands.
 *
 * Ready: the last attempts, as many in a row as the criteria ask for (three), are at the criterion. Nearly: the last one is, or
 * misses it narrowly in one thing. The tempo that counts is the one aimed at last. Common practice, no source (measures.md).
 */
export function standingOf(
  exercise: ExerciseChoice,
  attempts: readonly Practised[],
  criteria: Criteria,
): Standing {
  const last = attempts.at(-1);
  if (last === undefined) {
    return {
      exercise,
      level: 'new',
      reason: 'Not played yet.',
      missing: 'A first attempt.',
      attempts: 0,
      inARow: 0,
      lastMs: null,
      targetBpm: null,
    };
  }
  const { targetBpm } = last.summary;
  const missed = shortfalls(last.summary, criteria, targetBpm);
  const inARow = rowAtCriterion(attempts, criteria, targetBpm);
  const level = levelOf(inARow, missed, criteria);
  return {
    exercise,
    level,
    reason: reasonOf(inARow, missed, targetBpm),
    missing: missingOf(level, inARow, missed, criteria),
    attempts: attempts.length,
    inARow,
    lastMs: last.whenMs,
    targetBpm,
  };
}

/** How many attempts, counted from the last, are at the criterion without a break; never more than a reader needs to count. */
function rowAtCriterion(
  attempts: readonly Practised[],
  criteria: Criteria,
  targetBpm: number | null,
): number {
  let count = 0;
  while (count < attempts.length) {
    const attempt = attempts[attempts.length - 1 - count]!;
    if (shortfalls(attempt.summary, criteria, targetBpm).length > 0) break;
    count += 1;
  }
  return count;
}

function levelOf(inARow: number, missed: readonly Shortfall[], criteria: Criteria): Level {
  if (inARow >= Math.max(1, criteria.readyInARow)) return 'ready';
  if (inARow > 0) return 'nearly';
  return missed.length === 1 && missed[0]!.narrow ? 'nearly' : 'not-yet';
}

function reasonOf(inARow: number, missed: readonly Shortfall[], targetBpm: number | null): string {
  if (inARow === 0) return `Last time ${missed[0]!.says}.`;
  const tempo = targetBpm === null ? '' : `, at ${targetBpm}`;
  if (inARow === 1) return `The last attempt was right and even${tempo}.`;
  return `The last ${inWords(inARow)} attempts were right and even${tempo}.`;
}

function missingOf(level: Level, inARow: number, missed: readonly Shortfall[], criteria: Criteria): string {
  if (level === 'ready') return '';
  const more = Math.max(1, criteria.readyInARow) - inARow;
  if (inARow > 0)
    return more === 1
      ? 'One more like it makes it ready.'
      : `${capital(inWords(more))} more like it make it ready.`;
  const second = missed[1];
  const also = second === undefined ? '' : `Also, ${second.says}. `;
  return `${also}${FIRST_AID[missed[0]!.kind]}`;
}

/** What to do about a shortfall; common practice, no source. */
const FIRST_AID: Readonly<Record<Shortfall['kind'], string>> = {
  notes: 'Slower, until every note is right.',
  unsure: 'Nearer to the piano, or in a quieter room, so that every note can be heard.',
  evenness: 'The same, with the pulse.',
  crossings: 'Only the notes around the crossing, slowly; then the whole.',
  chords: 'Touch all the keys of the chord before pressing.',
  hands: 'Slower, stopping on each beat, both hands together.',
  tempo: 'Two or three beats faster each time, as long as it stays even.',
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
