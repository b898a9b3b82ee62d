import type { coldAgainstBest, Recurring } from '../../engine/index.ts';
import { strings } from '../language/index.ts';
import { percentWords } from './words.ts';

/** A fault that comes back, in the language of the page; and what practice did to it. */
export function recurringWords({ kind, place, hands, attempts, of, keys, ofKeys, then }: Recurring): string {
  const t = strings().journal.overWeeks;
  const what = `${t.places[place]} ${t.kinds[kind]}`;
  const found = t.found(t.hands[hands], what, attempts.length, of, keys, ofKeys);
  return then === null ? found : `${found} ${t.then(then.before, then.ofBefore, then.since, then.ofSince)}`;
}

/** "From cold it varies by 8.1 %, at the best of the day by 5.2 % …" */
export function coldBestWords({
  coldPercent,
  bestPercent,
  days,
}: NonNullable<ReturnType<typeof coldAgainstBest>>): string {
  return strings().journal.overWeeks.coldBest(percentWords(coldPercent), percentWords(bestPercent), days);
}
