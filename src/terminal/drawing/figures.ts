import { exerciseIn, isDotted, isSolid, sideOf, tellKept, touchHeard } from '../../engine/index.ts';
import type { Estimate, Locale, Measures, NotMeasured, Report } from '../../engine/index.ts';
import type { ReportStrings } from '../language/index.ts';
import { signed } from './text.ts';

/** One line of the table of figures. */
export interface Figure {
  readonly label: string;
  readonly text: string;
}

/** Report → its figures in words, those that were measured. */
export function figures(report: Report, t: ReportStrings): Figure[] {
  const { figures: label, parts: part } = t;
  const { measures, targetBpm } = report;
  const all: readonly (Figure | null)[] = [
    { label: label.notes, text: notes(report, t) },
    line(label.evenness, [
      figure(measures.evennessPercent, '%', 1),
      figure(measures.evennessMs, 'ms', 0),
      measures.crossings.length === 0
        ? null
        : figure(measures.evennessWithoutCrossingsPercent, '%', 1, part.withoutCrossings),
      measures.evenUpToPercent === undefined || !('value' in measures.evennessPercent)
        ? null
        : part.evenUpTo(`${measures.evenUpToPercent.toFixed(1)} %`),
    ]),
    line(label.ends, [
      longer(measures.turnDeviationMs, part.turn, t),
      longer(measures.firstIntervalDeviationMs, part.first, t),
      longer(measures.lastIntervalDeviationMs, part.last, t),
    ]),
    line(label.crossings, crossings(measures, t)),
    line(label.chords, [
      figure(measures.chordSpreadMs, 'ms', 0, part.spread),
      figure(measures.changeHesitationRatio, '', 2, part.slowestChange),
      isSolid(report.exercise.form) ? changeGap(measures, t) : null,
      louder(measures.innerBalanceDb, part.inner, t),
    ]),
    line(label.hands, [
      leader(measures, t),
      figure(measures.togetherness?.apartSdMs ?? NONE, 'ms', 0, part.apart),
    ]),
    line(label.loudness, [
      figure(measures.loudnessEvennessDb, 'dB', 1),
      'notMeasured' in measures.loudnessEvennessDb
        ? null
        : measures.keysKnown === true
          ? part.keysAllowedFor
          : part.asItSounds,
      louder(measures.thumbAccentDb, part.thumb, t),
      louder(measures.endsFadeDb, part.fade, t),
    ]),
    'notMeasured' in measures.tempoBpm
      ? null
      : line(label.tempo, [
          figure(measures.tempoBpm, '', 1, `${isDotted(report.exercise) ? '♩.' : '♩'} = `),
          targetBpm === null ? null : part.aim(targetBpm),
          drift(measures, t),
        ]),
    line(label.touch, [touch(measures, t)]),
    { label: label.piano, text: tuning(report, part.cents) },
  ];
  return all.flatMap((row) =>
    row === null ? [] : [{ ...row, text: row.text.replace(/(\d)\.(\d)/g, `$1${t.decimalSign}$2`) }],
  );
}

const NONE: NotMeasured = { notMeasured: '' };

function changeGap({ changeGapMs: gap }: Measures, { parts }: ReportStrings): string | null {
  if ('notMeasured' in gap) return null;
  const side = sideOf(gap);
  if (side === 0) return parts.either(errorOf(gap, 'ms', 0));
  const value = withError(Math.abs(gap.value).toFixed(0), gap, 'ms', 0);
  return side > 0 ? parts.silence(value) : parts.heldOver(value);
}

function leader({ togetherness }: Measures, { parts }: ReportStrings): string | null {
  const lead = togetherness?.leadMs ?? NONE;
  if ('notMeasured' in lead) return null;
  const side = sideOf(lead);
  if (side === 0) return parts.neitherLeads(errorOf(lead, 'ms', 0));
  const first = side < 0 ? 'left' : 'right';
  return parts.leads(first, withError(Math.abs(lead.value).toFixed(0), lead, 'ms', 0));
}

/** What could not be measured of what this exercise has, one sentence a reason. */
export function notMeasured(report: Report, t: ReportStrings, locale: Locale): string[] {
  const byReason = new Map<string, string[]>();
  const absent = absentMeasures(report);
  for (const [measure, label] of Object.entries(t.measures) as [keyof ReportStrings['measures'], string][]) {
    const value = report.measures[measure];
    if (!('notMeasured' in value) || absent.has(measure)) continue;
    const reason = tellKept(value.notice ?? value.notMeasured, locale);
    byReason.set(reason, [...(byReason.get(reason) ?? []), label]);
  }
  return [...byReason].map(([reason, labels]) => t.notMeasured(labels, reason));
}

/** Measures of what this exercise does not have: nobody misses them. */
function absentMeasures(report: Report): ReadonlySet<keyof Measures> {
  const { steps } = exerciseIn(report);
  const hasCrossings = steps.some(({ crossings }) => crossings.length > 0);
  const hasTurn = steps.some(({ turn }) => turn);
  const hasChords = steps.some(({ notes }) => new Set(notes.map(({ hand }) => hand)).size < notes.length);
  return new Set([
    ...(hasCrossings ? [] : (['crossingDelayMs', 'evennessWithoutCrossingsPercent'] as const)),
    ...(hasTurn ? [] : (['turnDeviationMs'] as const)),
    ...(hasChords
      ? (['touchMs'] as const)
      : (['chordSpreadMs', 'changeHesitationRatio', 'changeGapMs', 'innerBalanceDb'] as const)),
  ]);
}

function line(label: string, parts: readonly (string | null)[]): Figure | null {
  const said = parts.filter((part) => part !== null);
  return said.length === 0 ? null : { label, text: said.join('; ') };
}

function figure(measure: Estimate | NotMeasured, unit: string, digits: number, before = ''): string | null {
  if ('notMeasured' in measure) return null;
  return before + withError(measure.value.toFixed(digits), measure, unit, digits);
}

/** An interval against the others; which way only where it is sure. */
function longer(measure: Estimate | NotMeasured, before: string, { parts }: ReportStrings): string | null {
  if ('notMeasured' in measure) return null;
  if (sideOf(measure) === 0) return before + parts.longerOrShorter(errorOf(measure, 'ms', 0));
  return before + withError(signed(measure.value), measure, 'ms', 0);
}

/** A level against others; which way only where it is sure. */
function louder(measure: Estimate | NotMeasured, before: string, { parts }: ReportStrings): string | null {
  if ('notMeasured' in measure) return null;
  if (sideOf(measure) === 0) return before + parts.louderOrSofter(errorOf(measure, 'dB', 1));
  return before + withError(signed(measure.value, 1), measure, 'dB', 1);
}

function withError(value: string, { plusMinus }: Estimate, unit: string, digits: number): string {
  const error = plusMinus === undefined ? '' : ` ± ${rounded(plusMinus, digits)}`;
  return `${value}${error}${unit && ` ${unit}`}`;
}

const errorOf = ({ plusMinus = 0 }: Estimate, unit: string, digits: number): string =>
  `${rounded(plusMinus, digits)} ${unit}`;

/** An error that rounds to nothing is told as less than the last digit shown. */
function rounded(error: number, digits: number): string {
  const text = error.toFixed(digits);
  return Number(text) === 0 && error > 0 ? `<${(10 ** -digits).toFixed(digits)}` : text;
}

function notes({ notes: played, missed, unsure }: Report, { parts: part }: ReportStrings): string {
  const count = (verdict: string): number => played.filter((note) => note.verdict === verdict).length;
  const expected = count('correct') + count('wrong') + missed.length + unsure.length;
  const said = [
    part.right(count('correct'), expected),
    ...(
      [
        [count('wrong'), part.wrong],
        [missed.length, part.missed],
        [count('extra'), part.extra],
        [unsure.length, part.unsure],
      ] as const
    ).flatMap(([number, what]) => (number === 0 ? [] : [`${number} ${what}`])),
  ];
  return said.join(', ');
}

function crossings({ crossings: all }: Measures, { parts }: ReportStrings): string[] {
  return (['up', 'down'] as const).flatMap((direction) => {
    const delays = all
      .filter((crossing) => crossing.direction === direction)
      .map(({ delayMs }) => signed(delayMs));
    return delays.length === 0 ? [] : [`${parts.way[direction]} ${delays.join(', ')} ms`];
  });
}

function drift({ driftPercent: drift }: Measures, { parts }: ReportStrings): string | null {
  if ('notMeasured' in drift) return null;
  const { value, plusMinus = 0 } = drift;
  if (Math.abs(value) <= Math.max(plusMinus, 1)) return parts.steady;
  // The drift is that of the intervals: longer ones are slower playing.
  return parts.drifts(value > 0, withError(Math.abs(value).toFixed(1), drift, '%', 1));
}

function touch({ touchMs }: Measures, { parts }: ReportStrings): string | null {
  if ('notMeasured' in touchMs) return null;
  const way = touchHeard(touchMs);
  if (way === null) return parts.either(errorOf(touchMs, 'ms', 0));
  return parts[way](withError(Math.abs(touchMs.value).toFixed(0), touchMs, 'ms', 0));
}

function tuning({ tuning: { a4Hz, cents, sdCents } }: Report, unit: string): string {
  return `A4 = ${a4Hz.toFixed(1)} Hz (${signed(cents)} ± ${sdCents.toFixed(0)} ${unit})`;
}
