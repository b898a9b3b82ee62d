import type { Shortfall, Standing } from '../../engine/index.ts';
import { shown, withUnit } from '../kit/figures.ts';
import { strings } from '../language/index.ts';

/** Where an exercise stands, said: why, and what is missing ('' when it is ready). */
export interface StandingWords {
  readonly reason: string;
  readonly missing: string;
}

/** Standing → what a teacher would say of it, in the language of the page. */
export function standingWords({ level, shortfalls, inARow, wanted, targetBpm }: Standing): StandingWords {
  const t = strings().journal;
  if (level === 'new') return { reason: t.notPlayedYet, missing: '' };
  const [first, second] = shortfalls;
  if (first !== undefined) {
    const also = second === undefined ? '' : `${t.shortfalls.also(shortfallWords(second))} `;
    return {
      reason: t.shortfalls.lastTime(shortfallWords(first)),
      missing: also + t.remedies[first.kind],
    };
  }
  return {
    reason: t.inARow(inARow, targetBpm === null ? '' : t.at(targetBpm)),
    missing: inARow >= wanted ? '' : t.more(wanted - inARow),
  };
}

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
    case 'evenness-unknown':
      return t.evennessUnknown;
    case 'tempo-unknown':
      return t.tempoUnknown;
  }
}
