import { isMeasured, sideOf } from '../../engine/index.ts';
import type { CrossingDelay, Estimate, Exercise, Figure, Measures, Report } from '../../engine/index.ts';
import { beatSign } from '../attempt/plan.svelte.ts';
import { listed, shown, signed, withUnit } from '../kit/figures.ts';
import { notice, strings } from '../language/index.ts';
import { shownName } from '../names/index.ts';

/** One line of the list of measures. */
export interface MeasureLine {
  readonly term: string;
  readonly figure: string;
  /** what the figure means, in a teacher's words */
  readonly meaning: string;
  /** how it is defined, with its source where it has one */
  readonly definition: string;
  /** false: the figure could not be had, and `figure` says why */
  readonly measured: boolean;
}

/** More crossings than this in one direction are summed up instead of listed. */
const MOST_LISTED = 3;
/** Drift below this is called steady, per cent. */
const STEADY_PERCENT = 2;

/** "9.4 % ± 0.4" */
function estimate({ value, plusMinus }: Estimate, unit: string, decimals: number): string {
  const doubt = plusMinus === undefined ? '' : ` ± ${shown(plusMinus, decimals)}`;
  return withUnit(shown(value, decimals), unit) + doubt;
}

/** Words for one side of nought, for the other, and for what may be either. */
interface SideWords {
  readonly over: (amount: string) => string;
  readonly under: (amount: string) => string;
  readonly either: (plusMinus: string) => string;
}

/** A side is named only where it is sure, by the figure's size; else its ± alone is told. */
function bySide(measured: Estimate, words: SideWords, unit: string, decimals = 0): string {
  const { value, plusMinus = 0 } = measured;
  const side = sideOf(measured);
  if (side === 0) return words.either(withUnit(shown(plusMinus, decimals), unit));
  return words[side > 0 ? 'over' : 'under'](withUnit(shown(Math.abs(value), decimals), unit));
}

/** The words of a line: what it is called, what it means and how it is defined. */
interface LineWords {
  readonly term: string;
  readonly meaning: string;
  readonly definition: string;
}

function line(
  { term, meaning, definition }: LineWords,
  measure: Figure,
  say: (measured: Estimate) => string,
): MeasureLine {
  return isMeasured(measure)
    ? { term, meaning, definition, figure: say(measure), measured: true }
    : {
        term,
        meaning,
        definition,
        figure: strings().report.notMeasured(notice(measure.notice ?? measure.notMeasured)),
        measured: false,
      };
}

/** Report → its measures in the order in which they are worth reading. Figures that do not apply are left out. */
export function measureLines(report: Report, exercise: Exercise): readonly MeasureLine[] {
  const { measures, targetBpm } = report;
  const t = strings().measures;
  const chords = exercise.steps.some(
    (step) => step.notes.filter((note) => note.hand === step.notes[0]!.hand).length > 1,
  );
  const crosses = exercise.steps.some((step) => step.crossings.length > 0);
  return [
    notesLine(report, exercise),
    line(
      t.evenness,
      measures.evennessPercent,
      (even) => `${estimate(even, '%', 1)}${withoutCrossings(measures)}${evenUpTo(measures)}`,
    ),
    ...(crosses ? [crossingsLine(measures)] : []),
    ...(chords ? chordLines(measures) : []),
    ...(measures.togetherness === undefined ? [] : handLines(measures.togetherness)),
    line(
      t.loudness,
      measures.loudnessEvennessDb,
      (loud) => `± ${withUnit(shown(loud.value, 1), 'dB')}${against(measures)}${thumb(measures)}`,
    ),
    line(
      t.tempo,
      measures.tempoBpm,
      (tempo) =>
        `${beatSign(report.exercise)} = ${shown(tempo.value)}${targetBpm === null ? '' : t.tempo.aim(shown(targetBpm))}${drift(measures)}`,
    ),
    ...(chords
      ? []
      : [
          line(t.touch, measures.touchMs, (touch) =>
            bySide(touch, { over: t.touch.connected, under: t.touch.detached, either: t.touch.either }, 'ms'),
          ),
        ]),
    tuningLine(report),
  ];
}

function notesLine(report: Report, exercise: Exercise): MeasureLine {
  const t = strings().measures.notes;
  const expected = exercise.steps.reduce((sum, step) => sum + step.notes.length, 0);
  const count = (verdict: string): number => report.notes.filter((note) => note.verdict === verdict).length;
  const parts = [
    count('wrong') > 0 ? t.wrong(count('wrong')) : '',
    report.missed.length > 0 ? t.missed(report.missed.length) : '',
    report.unsure.length > 0 ? t.unsure(report.unsure.length) : '',
    t.extra(count('extra')),
  ].filter((part) => part !== '');
  return {
    term: t.term,
    meaning: t.meaning,
    definition: t.definition,
    figure: t.of(count('correct'), expected, listed(parts)),
    measured: true,
  };
}

function withoutCrossings(measures: Measures): string {
  const without = measures.evennessWithoutCrossingsPercent;
  if (!isMeasured(without) || measures.crossings.length === 0) return '';
  return strings().measures.evenness.without(withUnit(shown(without.value, 1), '%'));
}

function evenUpTo({ evenUpToPercent }: Measures): string {
  if (evenUpToPercent === undefined) return '';
  return strings().measures.evenness.upTo(withUnit(shown(evenUpToPercent, 1), '%'));
}

function crossingsLine(measures: Measures): MeasureLine {
  const t = strings().measures.crossings;
  const directions = (['up', 'down'] as const).flatMap((direction) => {
    const delays = measures.crossings.filter((crossing) => crossing.direction === direction);
    return delays.length === 0 ? [] : [t[direction](delayList(delays))];
  });
  return line(t, measures.crossingDelayMs, () => directions.join('; '));
}

function delayList(delays: readonly CrossingDelay[]): string {
  if (delays.length <= MOST_LISTED)
    return listed(delays.map(({ delayMs }) => withUnit(signed(delayMs), 'ms')));
  const all = delays.map(({ delayMs }) => delayMs);
  return strings().measures.crossings.range(
    signed(Math.min(...all)),
    withUnit(signed(Math.max(...all)), 'ms'),
  );
}

function chordLines(measures: Measures): readonly MeasureLine[] {
  const { spread, changes, inner } = strings().measures;
  return [
    line(spread, measures.chordSpreadMs, (figure) => spread.figure(estimate(figure, 'ms', 0))),
    line(
      changes,
      measures.changeHesitationRatio,
      ({ value }) => changes.figure(shown(value, 1)) + silence(measures),
    ),
    line(inner, measures.innerBalanceDb, (balance) =>
      bySide(balance, { over: inner.louder, under: inner.softer, either: inner.either }, 'dB', 1),
    ),
  ];
}

function silence({ changeGapMs: gap }: Measures): string {
  if (!isMeasured(gap)) return '';
  const t = strings().measures.changes;
  return bySide(gap, { over: t.silence, under: t.held, either: t.either }, 'ms');
}

function handLines({ leadMs, apartSdMs }: NonNullable<Measures['togetherness']>): readonly MeasureLine[] {
  const t = strings().measures.together;
  return [
    line(t, leadMs, (lead) => {
      const doubt = lead.plusMinus === undefined ? '' : ` ± ${shown(lead.plusMinus)}`;
      const varies = isMeasured(apartSdMs) ? t.varies(withUnit(shown(apartSdMs.value), 'ms')) : '';
      const words = {
        over: (amount: string) => t.right(amount + doubt),
        under: (amount: string) => t.left(amount + doubt),
        either: t.either,
      };
      return bySide(lead, words, 'ms') + varies;
    }),
  ];
}

/** A piano's own keys differ: they are allowed for, or it is told that they are in the figure. */
function against({ keysKnown }: Measures): string {
  const t = strings().measures.loudness;
  return keysKnown === true ? t.keysAllowedFor : t.asItSounds;
}

function thumb(measures: Measures): string {
  const accent = measures.thumbAccentDb;
  if (!isMeasured(accent)) return '';
  const { thumbLouder, thumbSofter } = strings().measures.loudness;
  return bySide(accent, { over: thumbLouder, under: thumbSofter, either: () => '' }, 'dB', 1);
}

function drift(measures: Measures): string {
  if (!isMeasured(measures.driftPercent)) return '';
  const t = strings().measures.tempo;
  const { value, plusMinus = 0 } = measures.driftPercent;
  if (Math.abs(value) < Math.max(STEADY_PERCENT, 2 * plusMinus)) return t.steady;
  const amount = withUnit(shown(Math.abs(value)), '%');
  return value > 0 ? t.slower(amount) : t.faster(amount);
}

/** Cents against A4 = 440 Hz → "72 cents flat" */
export function standingWords(cents: number): string {
  const t = strings().measures.piano;
  const off = Math.round(cents);
  const amount = withUnit(shown(Math.abs(off)), t.cents(Math.abs(off)));
  return off === 0 ? t.asAFork : off < 0 ? t.flat(amount) : t.sharp(amount);
}

function tuningLine(report: Report): MeasureLine {
  const { a4Hz, cents } = report.tuning;
  const t = strings().measures.piano;
  const standing = standingWords(cents);
  return {
    term: t.term,
    figure: `${shownName('A')} = ${withUnit(shown(a4Hz, 1), 'Hz')}, ${standing}`,
    meaning: t.meaning,
    definition: t.definition,
    measured: true,
  };
}
