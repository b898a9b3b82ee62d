import type { coldAgainstBest, Recurring, Shortfall, Standing } from '../../engine/index.ts';
import { beatSign } from '../attempt/plan.svelte.ts';
import { shown, withUnit } from '../kit/figures.ts';
import { strings } from '../language/index.ts';

/** Where an exercise stands, said: why, and what is missing ('' when it is ready). */
export interface StandingWords {
  readonly reason: string;
  readonly missing: string;
}

/** Standing → what a teacher would say of it, in the language of the page. */
export function standingWords(standing: Standing): StandingWords {
  const t = strings().journal;
  const { exercise, level, shortfalls, inARow, leastBpm } = standing;
  if (level === 'new') return { reason: t.notPlayedYet, missing: '' };
  const [first, second] = shortfalls;
  if (first !== undefined) {
    const also = second === undefined ? '' : `${t.shortfalls.also(shortfallWords(second))} `;
    return {
      reason: t.shortfalls.lastTime(shortfallWords(first)),
      missing: also + t.remedies[first.kind],
    };
  }
  const at = leastBpm === null ? '' : t.at(`${beatSign(exercise)} = ${shown(leastBpm)}`);
  return { reason: t.inARow(inARow, at), missing: missingWords(standing) };
}

/** What is missing where the last attempts were at the criterion; '': nothing, it is ready. */
function missingWords({ level, inARow, wanted, days, wantedDays, waitsFor }: Standing): string {
  const t = strings().journal;
  if (level === 'ready') return '';
  const [attempts, moreDays] = [Math.max(0, wanted - inARow), Math.max(0, wantedDays - days)];
  if (attempts > 0 && moreDays > 0) return t.moreOnDays(attempts, moreDays);
  if (attempts > 0) return t.more(attempts);
  if (moreDays > 0) return t.onDays(moreDays);
  return t.handsFirst(waitsFor.map((hand) => t.HANDS[hand]));
}

/** How the first try of a day went of late; '' where there were too few days to say. */
export function coldWords({ cold: { days, right } }: Standing): string {
  return days < LEAST_DAYS ? '' : strings().journal.cold(right, days);
}

/** On one day anything may happen. */
const LEAST_DAYS = 2;

/** What kept an attempt from the criterion, as a clause. */
export function shortfallWords(shortfall: Shortfall): string {
  const t = strings().journal.shortfalls;
  const ms = (value: number): string => withUnit(shown(value), 'ms');
  const percent = (value: number, decimals: number): string => withUnit(shown(value, decimals), '%');
  switch (shortfall.kind) {
    case 'notes': {
      const { wrong, missed, extra } = shortfall;
      const kinds = [wrong, missed, extra].filter((count) => count > 0).length;
      if (kinds > 1) return t.several(wrong, missed, extra);
      return wrong > 0 ? t.wrong(wrong) : missed > 0 ? t.missed(missed) : t.extra(extra);
    }
    case 'unsure':
      return t.unsure(shortfall.count, shortfall.of);
    case 'crossings':
      return shortfall.count === 1
        ? t.crossing(ms(shortfall.worstMs))
        : t.crossings(shortfall.count, ms(shortfall.worstMs));
    case 'evenness':
      return t.evenness(
        percent(shortfall.percent, 1),
        percent(shortfall.bound, shortfall.bound % 1 === 0 ? 0 : 1),
      );
    case 'chords':
      return t.chords(ms(shortfall.ms), ms(shortfall.bound));
    case 'hands':
      return t.hands(ms(shortfall.ms), ms(shortfall.bound));
    case 'tempo':
      return t.tempo(shown(shortfall.bpm), shown(shortfall.targetBpm));
    case 'touch':
      return t.touch[shortfall.meant](ms(Math.max(0, shortfall.gapMs)));
    case 'loudness':
      return t.loudness(withUnit(shown(shortfall.db, 1), 'dB'), withUnit(shown(shortfall.bound, 1), 'dB'));
    case 'evenness-unknown':
      return t.evennessUnknown;
    case 'tempo-unknown':
      return t.tempoUnknown;
  }
}

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
  const percent = (value: number): string => withUnit(shown(value, 1), '%');
  return strings().journal.overWeeks.coldBest(percent(coldPercent), percent(bestPercent), days);
}
