import { exerciseId } from '../../engine/index.ts';
import type { Entry } from '../../io/history/index.ts';

const DAY_MS = 86_400_000;
/** What a teacher is shown is of late: from the last attempt back; common practice, no source. */
const LATE_DAYS = 14;

/** Entries, oldest first → those that can be sent, newest first: what came to a report. */
export function sendable(entries: readonly Entry[]): readonly Entry[] {
  return entries.filter(({ state, summary }) => state === 'told' && summary !== null).toReversed();
}

/** Sendable entries, newest first → how many of them are of the last fortnight of practice. */
export function ofLate(newestFirst: readonly Entry[]): number {
  const since = (newestFirst[0]?.whenMs ?? 0) - LATE_DAYS * DAY_MS;
  const older = newestFirst.findIndex(({ whenMs }) => whenMs < since);
  return older === -1 ? newestFirst.length : older;
}

/** Entries, oldest first → what is sent where nobody chooses: the newest attempt at each exercise of the last fortnight, `most` at most. */
export function toSend(entries: readonly Entry[], most = MOST_SENT): readonly string[] {
  const all = sendable(entries);
  const seen = new Set<string>();
  const newest = all.slice(0, ofLate(all)).filter(({ summary }) => {
    const id = exerciseId(summary!.exercise);
    return !seen.has(id) && seen.add(id);
  });
  return newest.slice(0, most).map(({ id }) => id);
}

/** So many attempts go into one file: a teacher hears each, and a file that is too large is not sent on by mail. */
export const MOST_SENT = 50;
