import { summarise } from '../../engine/index.ts';
import type { Entry, NewAttempt, Outcome } from './types.ts';

/** Letters of a time in base 36: enough until the year 5188, with leading zeros so that order of text is order of time. */
const TIME_LETTERS = 9;

/** Names of attempts: the time, then what tells apart attempts of one moment. */
export const ID_PATTERN = /^[0-9a-z]{9}-[0-9a-z]{4,40}$/;

/** A moment and some letters → a name that sorts by its time. */
export function nameFor(whenMs: number, letters: string): string {
  return `${Math.max(0, Math.round(whenMs)).toString(36).padStart(TIME_LETTERS, '0')}-${letters}`;
}

/** The time in a name, ms since 1970. */
export function timeIn(id: string): number {
  return Number.parseInt(id.slice(0, TIME_LETTERS), 36);
}

/** An attempt that was not analysed yet → its entry. `id`: its name, where it has none yet; `soundBytes`: as it is stored. */
export function newEntry({ sound, intention, ...known }: NewAttempt, id: string, soundBytes: number): Entry {
  return {
    id,
    whenMs: timeIn(id),
    state: 'unanalysed',
    ...known,
    ...(intention && { intention }),
    durationSec: (sound.channels[0]?.length ?? 0) / sound.sampleRateHz,
    soundBytes,
    reason: '',
    summary: null,
    deletedMs: null,
  };
}

/** An entry with what came of its attempt. */
export function completed(entry: Entry, outcome: Outcome): Entry {
  return 'report' in outcome
    ? { ...entry, state: 'told', reason: '', summary: summarise(outcome.report) }
    : { ...entry, state: 'no-report', reason: outcome.reason, summary: null };
}

/** Entries with one put in its place, in order of names; the entry of that name is replaced. */
export function withEntry(entries: readonly Entry[], entry: Entry): readonly Entry[] {
  const at = entries.findIndex((one) => one.id >= entry.id);
  if (at === -1) return [...entries, entry];
  const replaced = entries[at]!.id === entry.id ? 1 : 0;
  return entries.toSpliced(at, replaced, entry);
}
