import * as v from 'valibot';
import { NUMBER, told, type Shape } from '../base/shapes.ts';
import { DEFAULT_CRITERIA, isMeasured, lateCrossings } from '../report/index.ts';
import type { Figure, Report } from '../report/index.ts';

/** What is clearly otherwise than in an earlier attempt at the same exercise. */
export const CHANGE = v.object({
  kind: told(
    'notes wrong, missed or extra; evenness of time, %; crossings that are late; spread of chords, ms; evenness of loudness, dB; tempo',
    v.picklist(['mistakes', 'evenness', 'crossings', 'spread', 'loudness', 'tempo']),
  ),
  before: NUMBER,
  now: NUMBER,
  better: told(
    'a change for the better; null of the tempo, of which nobody can say',
    v.nullable(v.boolean()),
  ),
});
export type Change = Shape<typeof CHANGE>;

/**
 * Two reports of one exercise, the earlier first → what changed, in the order in which a teacher would speak of it; nothing where
 * it went as before. A figure has changed where the difference is over twice the ± of both (`sureBy`), the tempo where
 * it is more than `tempoShare` away.
 */
export function changesSince(earlier: Report, now: Report): readonly Change[] {
  const [a, b] = [earlier.measures, now.measures];
  return [
    ...counted('mistakes', mistakes(earlier), mistakes(now)),
    ...measured('evenness', a.evennessPercent, b.evennessPercent),
    ...counted('crossings', lateCrossings(earlier).length, lateCrossings(now).length),
    ...measured('spread', a.chordSpreadMs, b.chordSpreadMs),
    ...measured('loudness', a.loudnessEvennessDb, b.loudnessEvennessDb),
    ...tempo(a.tempoBpm, b.tempoBpm),
  ];
}

function mistakes({ notes, missed }: Report): number {
  return notes.filter(({ verdict }) => verdict !== 'correct').length + missed.length;
}

function counted(kind: Change['kind'], before: number, now: number): readonly Change[] {
  return before === now ? [] : [{ kind, before, now, better: now < before }];
}

function measured(kind: Change['kind'], before: Figure, now: Figure): readonly Change[] {
  if (!isMeasured(before) || !isMeasured(now)) return [];
  const doubt = DEFAULT_CRITERIA.sureBy * Math.hypot(before.plusMinus ?? 0, now.plusMinus ?? 0);
  if (Math.abs(now.value - before.value) <= doubt) return [];
  return counted(kind, before.value, now.value);
}

function tempo(before: Figure, now: Figure): readonly Change[] {
  if (!isMeasured(before) || !isMeasured(now)) return [];
  if (Math.abs(now.value / before.value - 1) <= DEFAULT_CRITERIA.tempoShare) return [];
  return [{ kind: 'tempo', before: before.value, now: now.value, better: null }];
}
