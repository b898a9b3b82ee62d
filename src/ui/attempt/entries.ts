import { isPractice, type ExerciseChoice } from '../../engine/index.ts';
import type { Entry } from '../../io/history/index.ts';
import { sameChoice } from './plan.svelte.ts';

/** So many of each hand are enough for everything that a report compares: rows of three and four, and the last one. */
const OF_EACH_HAND = 8;
/** Where the exercise is still to be recognised, the last attempts at whatever it was. */
const OF_ANY = 40;

/**
 * Attempts told before one (null: before one to come), oldest first, whose reports a new report is compared with: the last of
 * the same exercise, by each hand and both; or, where the exercise is not known yet, the last of all.
 */
export function earlierIds(
  entries: readonly Entry[],
  choice: ExerciseChoice | null,
  before: string | null,
): readonly string[] {
  const left = new Map<string, number>();
  const ids: string[] = [];
  for (let index = entries.length - 1; index >= 0; index -= 1) {
    const { id, state, summary } = entries[index]!;
    if (state !== 'told' || summary === null || (before !== null && id >= before)) continue;
    if (choice === null) {
      ids.push(id);
      if (ids.length === OF_ANY) break;
      continue;
    }
    const { exercise } = summary;
    // Practice leaves the whole its place: both are looked back on.
    const kind = `${exercise.hands} ${isPractice(summary)}`;
    const wanted = left.get(kind) ?? OF_EACH_HAND;
    if (wanted === 0 || !sameMusic(exercise, choice)) continue;
    left.set(kind, wanted - 1);
    ids.push(id);
  }
  return ids.reverse();
}

const DAY_MS = 86_400_000;

/** A moment, ms since 1970 → the day of the calendar on which it is here, counted from 1970. */
export function dayOf(whenMs: number): number {
  // A day with a change of the clock is an hour longer or shorter.
  return Math.round(new Date(whenMs).setHours(0, 0, 0, 0) / DAY_MS);
}

/** Attempts with a longer break between them are of two sittings, ms. Common practice, no source. */
const BREAK_MS = 30 * 60_000;

/** Attempts by their names, oldest first → how many of the last were played in the sitting that goes on at `nowMs`. */
export function sittingOf(entries: readonly Entry[], ids: readonly string[], nowMs: number): number {
  const whenMs = new Map(entries.map((entry) => [entry.id, entry.whenMs]));
  const times = [...ids.map((id) => whenMs.get(id) ?? -Infinity), nowMs];
  const breakAt = times.findLastIndex((time, at) => at > 0 && time - times[at - 1]! > BREAK_MS);
  return times.length - 1 - Math.max(0, breakAt);
}

/** Attempts by their names → how many days of the calendar before `nowMs` each was played, in that order. */
export function daysBefore(
  entries: readonly Entry[],
  ids: readonly string[],
  nowMs: number,
): readonly number[] {
  const whenMs = new Map(entries.map((entry) => [entry.id, entry.whenMs]));
  return ids.map((id) => dayOf(nowMs) - dayOf(whenMs.get(id) ?? nowMs));
}

/** The last attempts of the same exercise and hands before this one, oldest first: to be compared with it. */
export function othersIds(entries: readonly Entry[], id: string): readonly string[] {
  const choice = entries.find((entry) => entry.id === id)?.summary?.exercise;
  if (choice === undefined) return [];
  const same = entries.filter(
    ({ id: other, summary }) =>
      other < id &&
      summary !== null &&
      summary.exercise.hands === choice.hands &&
      sameMusic(summary.exercise, choice),
  );
  return same.slice(-OF_EACH_HAND).map((entry) => entry.id);
}

/** The same exercise, whichever hand plays it. */
const sameMusic = (a: ExerciseChoice, b: ExerciseChoice): boolean => sameChoice({ ...a, hands: b.hands }, b);

/** So many attempts that are in no file are worth a reminder; fewer where the oldest of them is so old, ms. Common practice, no source. */
const WORTH_WRITING_OUT = { attempts: 50, fewer: 5, afterMs: 30 * DAY_MS } as const;

/** Entries, oldest first → how many came since the journal was written out, where that is worth a reminder; else 0. */
export function toWriteOut(entries: readonly Entry[], writtenOutMs: number, nowMs: number): number {
  const since = entries.filter(({ whenMs }) => whenMs > writtenOutMs);
  const { attempts, fewer, afterMs } = WORTH_WRITING_OUT;
  const isLong = since.length >= fewer && nowMs - since[0]!.whenMs > afterMs;
  return since.length >= attempts || isLong ? since.length : 0;
}

/** Entries with those of these names changed. */
export function changedEntries(
  entries: readonly Entry[],
  ids: readonly string[],
  change: Partial<Entry>,
): readonly Entry[] {
  const wanted = new Set(ids);
  return entries.map((entry) => (wanted.has(entry.id) ? { ...entry, ...change } : entry));
}
