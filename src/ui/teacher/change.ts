import type { AttemptSummary } from '../../engine/index.ts';
import type { Playing } from '../../io/teaching/index.ts';
import { sameChoice } from '../attempt/plan.svelte.ts';
import { isOneDay, percentWords, whenWords } from '../practice/words.ts';
import { strings } from '../language/index.ts';

/** A difference is told from twice the ± of both on, as in the comparison of two attempts; this where the ± is not known, per cent. */
const SURE_BY = 2;
const UNKNOWN_PLUS_MINUS = 1.5;

/** The attempt of the same exercise before this one, by the same student. `attempts`: hers, oldest first. */
export function beforeIt(playing: Playing, attempts: readonly Playing[]): Playing | null {
  const { summary } = playing;
  const at = attempts.findIndex(({ id }) => id === playing.id);
  if (summary === null || at < 0) return null;
  const before = attempts
    .slice(0, at)
    .findLast((one) => one.summary !== null && sameChoice(one.summary.exercise, summary.exercise));
  return before ?? null;
}

/** "Since 1 Nov 2026: more even (9.0 % before, 6.0 % now)."; two attempts of one day are not told by their times. */
export function sinceWords(before: Playing, now: Playing, nowMs: number): string {
  const t = strings().teacher.change;
  const words = changeWords(before, now) || t.same;
  const { whenMs } = before;
  if (whenMs === null || (now.whenMs !== null && isOneDay(whenMs, now.whenMs))) return t.sinceLast(words);
  return t.since(whenWords(whenMs, nowMs), words);
}

/** What changed since then, in a few words; '' where nothing stands out. */
export function changeWords(before: Playing, now: Playing): string {
  const [was, is] = [before.summary, now.summary];
  if (was === null || is === null) return '';
  const t = strings().teacher.change;
  const [wasWrong, isWrong] = [mistakes(was), mistakes(is)];
  return [
    ...(isWrong === wasWrong
      ? []
      : [isWrong < wasWrong ? t.fewer(wasWrong, isWrong) : t.more(wasWrong, isWrong)]),
    ...evenness(before, now),
  ].join(', ');
}

function mistakes({ wrong, missed, extra }: AttemptSummary): number {
  return wrong + missed + extra;
}

function evenness(before: Playing, now: Playing): readonly string[] {
  const [was, is] = [before.summary?.evennessPercent ?? null, now.summary?.evennessPercent ?? null];
  if (was === null || is === null) return [];
  const [a, b] = [before, now].map((one) => one.evennessPlusMinus ?? UNKNOWN_PLUS_MINUS);
  if (Math.abs(is - was) <= SURE_BY * Math.hypot(a!, b!)) return [];
  const t = strings().teacher.change;
  return [(is < was ? t.moreEven : t.lessEven)(percentWords(was), percentWords(is))];
}
