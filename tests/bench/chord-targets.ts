import { median, standardDeviation } from '../../src/engine/base/statistics.ts';
import type { ChordSet } from './attempts.ts';
import { doubted, sum } from './errors.ts';
import type { Records } from './errors.ts';
import { addCounts, fMeasure } from './note-score.ts';
import { pairCounts } from './place-tables.ts';
import { fixed, table } from './table.ts';

/** A figure, its bound and how much it stands on. */
interface Figure {
  readonly name: string;
  readonly value: number | undefined;
  readonly atLeast?: number;
  readonly atMost?: number;
  readonly digits: number;
  readonly unit: string;
  readonly of: string;
}

/** What is aimed at in each set, bound by bound. */
const BOUNDS = {
  'one-hand': { f50: 0.995, f25: 0.99, doubted: 0.5, found: 97, extras: 0.5, onsetMs: 4, apartMs: 4 },
  'both-hands': { f50: 0.985, f25: 0.975, doubted: 1, found: 95, extras: 1, onsetMs: 5, apartMs: 5 },
  kinds: { f50: 0.985, f25: 0.975, doubted: 0.1, found: 95, extras: 1, onsetMs: 5, apartMs: 5 },
  'octave-pairs': { f50: null, f25: null, doubted: 1, found: 90, extras: null, onsetMs: 8, apartMs: null },
} as const;
const MOST_UNSURE_PERCENT = 2;
const UPPER_RECALL = 0.95;
const MOST_INVENTED_PERCENT = 2;

/** Attempts of one set → its figures against what was promised: met, NOT MET, or not measured. */
export function chordTargetTable(
  set: Exclude<ChordSet, 'conditions' | 'aims' | 'one-of-two'>,
  records: Records,
): string {
  return table(
    ['figure', 'wanted', 'measured', 'of', ''],
    figuresOf(set, records).map(({ name, value, atLeast, atMost, digits, unit, of }) => [
      name,
      atLeast === undefined ? (atMost === undefined ? '' : `≤ ${atMost}${unit}`) : `≥ ${atLeast}${unit}`,
      value === undefined || Number.isNaN(value) ? '–' : `${fixed(value, digits)}${unit}`,
      of,
      verdict(value, atLeast, atMost),
    ]),
  );
}

function verdict(value: number | undefined, atLeast?: number, atMost?: number): string {
  if (atLeast === undefined && atMost === undefined) return '';
  if (value === undefined || Number.isNaN(value)) return 'not measured';
  return value >= (atLeast ?? -Infinity) && value <= (atMost ?? Infinity) ? 'met' : 'NOT MET';
}

function figuresOf(
  set: Exclude<ChordSet, 'conditions' | 'aims' | 'one-of-two'>,
  records: Records,
): readonly Figure[] {
  const bound = BOUNDS[set];
  const right = sum(records, ({ verdicts }) => verdicts.right);
  const unsure = sum(records, ({ verdicts }) => verdicts.rightUnsure);
  const wrong = sum(records, ({ verdicts }) => verdicts.wrong);
  const missed = sum(records, ({ verdicts }) => verdicts.missed);
  const wrongFound = sum(records, ({ verdicts }) => verdicts.wrongFound);
  const missedFound = sum(records, ({ verdicts }) => verdicts.missedFound);
  const leftUnsure = sum(
    records,
    ({ places }) => places.filter(({ truth, said }) => truth === 'absent' && said === 'unsure').length,
  );
  const falseExtras = sum(records, ({ verdicts }) => verdicts.falseExtras);
  const onsets = records.flatMap(({ finalErrorsMs }) => finalErrorsMs);
  const f = (windowMs: 25 | 50): number => fMeasure(addCounts(records.map(({ final }) => final[windowMs])));
  const percentOf = (part: number, whole: number): number => (100 * part) / whole;
  const [upper, lower] = [pairCounts(records, 'upper'), pairCounts(records, 'lower')];
  const notes = `${right} notes`;
  const spread = records.flatMap(({ measures }) => measures?.chordSpreadsMs.map(Math.abs) ?? []);
  const together = records.flatMap(({ measures }) => measures?.togetherMs.map(Math.abs) ?? []);
  const atLeast = (value: number | null): Pick<Figure, 'atLeast'> =>
    value === null ? {} : { atLeast: value };
  const atMost = (value: number | null): Pick<Figure, 'atMost'> => (value === null ? {} : { atMost: value });
  const percent = { digits: 2, unit: ' %' };
  const ms = { digits: 1, unit: ' ms' };
  return [
    { name: 'F after recheck, ±50 ms', value: f(50), ...atLeast(bound.f50), digits: 4, unit: '', of: notes },
    { name: 'F after recheck, ±25 ms', value: f(25), ...atLeast(bound.f25), digits: 4, unit: '', of: notes },
    {
      name: 'right notes called wrong or missed',
      value: percentOf(sum(records, doubted), right),
      atMost: bound.doubted,
      ...percent,
      of: notes,
    },
    {
      name: 'right notes left unsure',
      value: percentOf(unsure, right),
      atMost: MOST_UNSURE_PERCENT,
      ...percent,
      of: notes,
    },
    {
      name: 'wrong and missed notes found',
      value: percentOf(wrongFound + missedFound, wrong + missed),
      atLeast: bound.found,
      ...percent,
      of: `${wrong} + ${missed}`,
    },
    { name: '… wrong', value: percentOf(wrongFound, wrong), ...percent, of: String(wrong) },
    { name: '… missed', value: percentOf(missedFound, missed), ...percent, of: String(missed) },
    { name: '… missed, left unsure', value: percentOf(leftUnsure, missed), ...percent, of: String(missed) },
    {
      name: 'false extras per 100',
      value: percentOf(falseExtras, right),
      ...atMost(bound.extras),
      digits: 2,
      unit: '',
      of: notes,
    },
    {
      name: 'onset error, SD after recheck',
      value: standardDeviation(onsets),
      atMost: bound.onsetMs,
      ...ms,
      of: `${onsets.length} notes`,
    },
    ...(set === 'one-hand'
      ? [
          {
            name: 'spread of a chord, median error',
            value: median(spread),
            ...atMost(bound.apartMs),
            ...ms,
            of: `${spread.length} chords`,
          },
        ]
      : [
          {
            name: 'togetherness of a step, median error',
            value: median(together),
            ...atMost(bound.apartMs),
            ...ms,
            of: `${together.length} steps`,
          },
        ]),
    ...(set === 'octave-pairs'
      ? [
          {
            name: 'upper notes: recall',
            value: upper.recall,
            atLeast: UPPER_RECALL,
            digits: 4,
            unit: '',
            of: `${upper.struck} struck`,
          },
          {
            name: 'upper notes: invented',
            value: percentOf(upper.invented, upper.absent),
            atMost: MOST_INVENTED_PERCENT,
            ...percent,
            of: `${upper.absent} absent`,
          },
          {
            name: 'lower notes: recall',
            value: lower.recall,
            digits: 4,
            unit: '',
            of: `${lower.struck} struck`,
          },
          {
            name: 'lower notes: invented',
            value: percentOf(lower.invented, lower.absent),
            ...percent,
            of: `${lower.absent} absent`,
          },
        ]
      : []),
  ];
}
