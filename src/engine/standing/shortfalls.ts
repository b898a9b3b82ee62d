import { inWords } from './counts.ts';
import type { Criteria } from '../report/index.ts';
import type { AttemptSummary, Shortfall } from './types.ts';

/** How much over its bound a figure may be and still be narrowly missed, as a share of the bound; common practice, no source. */
const NARROW_SHARE = 0.5;
/** … and how much under the tempo aimed at: one step of a metronome from 60 up is 3 to 7 %; common practice, no source. */
const NARROW_TEMPO_SHARE = 0.1;

/**
 * What keeps an attempt from the criterion (measures.md, "Ready?"), in the order in which a teacher would speak of it; nothing
 * where it is reached. A crossing is late as the attempt's own report found it. `targetBpm` null: any tempo will do.
 */
export function shortfalls(
  summary: AttemptSummary,
  criteria: Criteria,
  targetBpm: number | null,
): readonly Shortfall[] {
  const found = [
    notes(summary),
    unsure(summary, criteria),
    late(summary),
    over(
      'evenness',
      summary.evennessPercent,
      criteria.evennessPercent,
      (value, bound) =>
        `the time from note to note varied by ${value.toFixed(1)} %, and up to ${plain(bound)} % counts as even`,
    ),
    over(
      'chords',
      summary.chordSpreadMs,
      criteria.chordSpreadMs,
      (value, bound) =>
        `the notes of a chord came ${value.toFixed(0)} ms apart, and up to ${plain(bound)} ms counts as one`,
    ),
    over(
      'hands',
      summary.handsApartMs,
      criteria.handsApartMs,
      (value, bound) =>
        `the hands were ${value.toFixed(0)} ms apart, and up to ${plain(bound)} ms counts as together`,
    ),
    unmeasured(summary),
    tempo(summary, criteria, targetBpm),
  ];
  return found.filter((one) => one !== null);
}

function notes({ wrong, missed, extra }: AttemptSummary): Shortfall | null {
  const faults = wrong + missed + extra;
  if (faults === 0) return null;
  const parts = [
    { count: wrong, was: 'wrong' },
    { count: missed, was: 'missed' },
    { count: extra, was: 'too many' },
  ].filter(({ count }) => count > 0);
  const [first, ...others] = parts.map(({ count, was }) => `${inWords(count)} ${was}`);
  const one = `${inWords(faults)} ${faults === 1 ? 'note was' : 'notes were'} ${parts[0]!.was}`;
  const says = others.length === 0 ? one : `of the notes, ${[first, ...others].join(', ')}`;
  return { kind: 'notes', says, narrow: faults === 1 };
}

/** As in the report: a share of the notes heard may be left in doubt. */
function unsure(
  { expected, unsure: count, missed, extra }: AttemptSummary,
  criteria: Criteria,
): Shortfall | null {
  const heard = expected - missed - count + extra;
  if (count <= criteria.unsureShare * heard) return null;
  return {
    kind: 'unsure',
    says: `${inWords(count)} of ${expected} notes could not be told`,
    narrow: count <= 2 * criteria.unsureShare * heard,
  };
}

function late({ lateCrossings, worstCrossingMs }: AttemptSummary): Shortfall | null {
  if (lateCrossings === 0 || worstCrossingMs === null) return null;
  const says =
    lateCrossings === 1
      ? `one crossing came ${worstCrossingMs.toFixed(0)} ms late`
      : `${inWords(lateCrossings)} crossings came late, the worst by ${worstCrossingMs.toFixed(0)} ms`;
  return { kind: 'crossings', says, narrow: lateCrossings === 1 };
}

function over(
  kind: Shortfall['kind'],
  value: number | null,
  bound: number,
  say: (value: number, bound: number) => string,
): Shortfall | null {
  if (value === null || value <= bound) return null;
  return { kind, says: say(value, bound), narrow: value <= bound * (1 + NARROW_SHARE) };
}

function unmeasured({ evennessPercent }: AttemptSummary): Shortfall | null {
  if (evennessPercent !== null) return null;
  return { kind: 'evenness', says: 'its evenness could not be measured', narrow: false };
}

function tempo(
  { tempoBpm }: AttemptSummary,
  { tempoShare }: Criteria,
  targetBpm: number | null,
): Shortfall | null {
  if (targetBpm === null || (tempoBpm !== null && tempoBpm >= targetBpm * (1 - tempoShare))) return null;
  return {
    kind: 'tempo',
    says:
      tempoBpm === null
        ? 'its tempo could not be measured'
        : `it went at ${tempoBpm.toFixed(0)}, and the aim is ${targetBpm}`,
    narrow: tempoBpm !== null && tempoBpm >= targetBpm * (1 - NARROW_TEMPO_SHARE),
  };
}

/** A bound as somebody set it: 8 → "8", 7.5 → "7.5". */
function plain(bound: number): string {
  return String(Math.round(bound * 10) / 10);
}
