import { DEFAULT_CRITERIA } from '../report/index.ts';
import type { Criteria } from '../report/index.ts';

/** A just-noticeable difference, as a share of intervals of 240 ms and more (Friberg & Sundberg 1995). */
const JND_SHARE = 0.025;

/** What somebody may set of "ready?", as it is shown: whole per cent, ms and counts. */
export interface ReadyBounds {
  readonly evennessPercent: number;
  readonly crossingPercent: number;
  readonly chordSpreadMs: number;
  readonly handsApartMs: number;
  /** under the tempo aimed at by no more than this */
  readonly tempoPercent: number;
  readonly readyInARow: number;
  readonly readyDays: number;
}

/** Least and most that each bound can be; outside, it would make everything or nothing ready. */
export const READY_LIMITS: Readonly<
  Record<keyof ReadyBounds, { readonly least: number; readonly most: number }>
> = {
  evennessPercent: { least: 2, most: 30 },
  crossingPercent: { least: 5, most: 100 },
  chordSpreadMs: { least: 10, most: 150 },
  handsApartMs: { least: 10, most: 150 },
  tempoPercent: { least: 0, most: 30 },
  readyInARow: { least: 1, most: 10 },
  readyDays: { least: 1, most: 7 },
};

/**
 * Criteria → the bounds of "ready?". A crossing is late over the lower of two bounds (a share of its interval, and so many
 * just-noticeable differences), so the lower one is shown.
 */
export function readyBounds(criteria: Criteria): ReadyBounds {
  const crossing = Math.min(criteria.crossingShareOfInterval, criteria.clearlyAudibleJnds * JND_SHARE);
  return {
    evennessPercent: criteria.evennessPercent,
    crossingPercent: Math.round(100 * crossing),
    chordSpreadMs: criteria.chordSpreadMs,
    handsApartMs: criteria.handsApartMs,
    tempoPercent: Math.round(100 * criteria.tempoShare),
    readyInARow: criteria.readyInARow,
    readyDays: criteria.readyDays,
  };
}

/** Bounds as somebody set them → criteria; each held within its limits, the rest as by default. */
export function criteriaOf(bounds: Partial<ReadyBounds>): Criteria {
  const defaults = readyBounds(DEFAULT_CRITERIA);
  const held = (name: keyof ReadyBounds): number => {
    const value = bounds[name] ?? defaults[name];
    const { least, most } = READY_LIMITS[name];
    return Number.isFinite(value) ? Math.min(Math.max(value, least), most) : defaults[name];
  };
  const crossing = held('crossingPercent');
  return {
    ...DEFAULT_CRITERIA,
    evennessPercent: held('evennessPercent'),
    unevenPercent: Math.max(DEFAULT_CRITERIA.unevenPercent, held('evennessPercent')),
    ...(crossing !== defaults.crossingPercent && {
      crossingShareOfInterval: crossing / 100,
      clearlyAudibleJnds: crossing / 100 / JND_SHARE,
    }),
    chordSpreadMs: held('chordSpreadMs'),
    handsApartMs: held('handsApartMs'),
    tempoShare: held('tempoPercent') / 100,
    readyInARow: Math.round(held('readyInARow')),
    readyDays: Math.round(held('readyDays')),
  };
}
