import { stepMs } from '../exercise/index.ts';
import { evenAt, touchOutcome } from '../report/index.ts';
import type { Criteria } from '../report/index.ts';
import type { AttemptSummary, Shortfall } from './types.ts';

/** How much over its bound a figure may be and still be narrowly missed, as a share of the bound; common practice, no source. */
const NARROW_SHARE = 0.5;
/** … and how much under the tempo aimed at: one step of a metronome from 60 up is 3 to 7 %; common practice, no source. */
const NARROW_TEMPO_SHARE = 0.1;

/**
 * What keeps an attempt from the criterion (README.md), in the order in which a teacher would speak of it; nothing
 * where it is reached. A crossing is late as the attempt's own report found it. `targetBpm` null: any tempo will do.
 */
export function shortfalls(
  summary: AttemptSummary,
  criteria: Criteria,
  targetBpm: number | null,
): readonly Shortfall[] {
  return [
    ...notes(summary),
    ...unsure(summary, criteria),
    ...crossings(summary),
    ...evenness(summary, criteria),
    ...over('chords', summary.chordSpreadMs, criteria.chordSpreadMs),
    ...over('hands', summary.handsApartMs, criteria.handsApartMs),
    ...tempo(summary, criteria, targetBpm),
    ...touch(summary, criteria),
    ...loudness(summary, criteria),
  ];
}

function notes({ wrong, missed, extra }: AttemptSummary): readonly Shortfall[] {
  const faults = wrong + missed + extra;
  return faults === 0 ? [] : [{ kind: 'notes', wrong, missed, extra, narrow: faults === 1 }];
}

/** As in the report: a share of the notes heard may be left in doubt. */
function unsure(summary: AttemptSummary, { unsureShare }: Criteria): readonly Shortfall[] {
  const { expected, unsure: count, missed, extra } = summary;
  const heard = expected - missed - count + extra;
  if (count <= unsureShare * heard) return [];
  return [{ kind: 'unsure', count, of: expected, narrow: count <= 2 * unsureShare * heard }];
}

function crossings({ lateCrossings, worstCrossingMs }: AttemptSummary): readonly Shortfall[] {
  if (lateCrossings === 0 || worstCrossingMs === null) return [];
  return [{ kind: 'crossings', count: lateCrossings, worstMs: worstCrossingMs, narrow: lateCrossings === 1 }];
}

/** As even as the tempo asks. */
function evenness(summary: AttemptSummary, criteria: Criteria): readonly Shortfall[] {
  const { evennessPercent: percent, tempoBpm, exercise } = summary;
  const ms = tempoBpm === null ? null : stepMs(exercise, tempoBpm);
  const bound = evenAt(criteria, ms).evennessPercent;
  if (percent === null) return [{ kind: 'evenness-unknown', narrow: false }];
  return percent <= bound ? [] : [{ kind: 'evenness', percent, bound, narrow: isNarrow(percent, bound) }];
}

function over(kind: 'chords' | 'hands', ms: number | null, bound: number): readonly Shortfall[] {
  return ms === null || ms <= bound ? [] : [{ kind, ms, bound, narrow: isNarrow(ms, bound) }];
}

function tempo(
  { tempoBpm: bpm }: AttemptSummary,
  { tempoShare }: Criteria,
  targetBpm: number | null,
): readonly Shortfall[] {
  if (targetBpm === null) return [];
  if (bpm === null) return [{ kind: 'tempo-unknown', narrow: false }];
  if (bpm >= targetBpm * (1 - tempoShare)) return [];
  return [{ kind: 'tempo', bpm, targetBpm, narrow: bpm >= targetBpm * (1 - NARROW_TEMPO_SHARE) }];
}

/** Other than asked for, as far as it was heard. */
function touch(
  { overlapMs, tempoBpm, exercise }: AttemptSummary,
  { touch: meant, sureBy }: Criteria,
): readonly Shortfall[] {
  if (meant === null || overlapMs === undefined || tempoBpm === null) return [];
  if (touchOutcome(meant, overlapMs, stepMs(exercise, tempoBpm), sureBy) !== 'not-so') return [];
  return [{ kind: 'touch', meant, gapMs: -overlapMs.value, narrow: false }];
}

/** Surely more uneven than asked for, where the keys of the piano were known. */
function loudness(
  { loudnessDb }: AttemptSummary,
  { loudnessDb: bound, sureBy }: Criteria,
): readonly Shortfall[] {
  if (bound === null || loudnessDb === undefined) return [];
  const { value: db, plusMinus } = loudnessDb;
  return db - sureBy * plusMinus <= bound
    ? []
    : [{ kind: 'loudness', db, bound, narrow: isNarrow(db, bound) }];
}

function isNarrow(value: number, bound: number): boolean {
  return value <= bound * (1 + NARROW_SHARE);
}
