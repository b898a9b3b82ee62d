import type { CrossingDelay, Estimate, Exercise, Measures, NotMeasured, Report } from '../../engine/index.ts';
import { beatSign } from '../attempt/plan.svelte.ts';
import { listed, shown, signed, withUnit } from '../kit/figures.ts';

/** One line of the list of measures. */
export interface MeasureLine {
  readonly term: string;
  readonly figure: string;
  /** what the figure means, in a teacher's words */
  readonly meaning: string;
  /** false: the figure could not be had, and `figure` says why */
  readonly measured: boolean;
}

/** More crossings than this in one direction are summed up instead of listed. */
const MOST_LISTED = 3;
/** Drift below this is called steady, per cent. */
const STEADY_PERCENT = 2;

const isMeasured = (figure: Estimate | NotMeasured): figure is Estimate => 'value' in figure;

/** "9.4 % ± 0.4" */
function estimate({ value, plusMinus }: Estimate, unit: string, decimals: number): string {
  const doubt = plusMinus === undefined ? '' : ` ± ${shown(plusMinus, decimals)}`;
  return withUnit(shown(value, decimals), unit) + doubt;
}

function line(
  term: string,
  meaning: string,
  measure: Estimate | NotMeasured,
  say: (measured: Estimate) => string,
): MeasureLine {
  return isMeasured(measure)
    ? { term, meaning, figure: say(measure), measured: true }
    : { term, meaning, figure: `not measured: ${lower(measure.notMeasured)}`, measured: false };
}

const lower = (sentence: string): string => sentence.charAt(0).toLowerCase() + sentence.slice(1);

/** Report → its measures in the order in which they are worth reading. Figures that do not apply are left out. */
export function measureLines(report: Report, exercise: Exercise): readonly MeasureLine[] {
  const { measures, targetBpm } = report;
  const chords = exercise.steps.some(
    (step) => step.notes.filter((note) => note.hand === step.notes[0]!.hand).length > 1,
  );
  const crosses = exercise.steps.some((step) => step.crossings.length > 0);
  return [
    notesLine(report, exercise),
    line(
      'Evenness of time',
      'How much the time from note to note varies, in per cent of that time; 0 would be a machine. Eight per cent or ' +
        'less is even. The ± is what the listening itself may be off by.',
      measures.evennessPercent,
      (even) => `${estimate(even, '%', 1)}${withoutCrossings(measures)}`,
    ),
    ...(crosses ? [crossingsLine(measures)] : []),
    ...(chords ? chordLines(measures) : []),
    ...(measures.togetherness === undefined ? [] : handLines(measures.togetherness)),
    line(
      'Evenness of loudness',
      'How much loudness varies from note to note, after taking out that low and high keys sound differently loud. ' +
        'A change of about one decibel can just be heard.',
      measures.loudnessEvennessDb,
      (loud) => `± ${withUnit(shown(loud.value, 1), 'dB')}${thumb(measures)}`,
    ),
    line(
      'Tempo',
      'Beats a minute, from the middle interval: a hesitation does not move it.',
      measures.tempoBpm,
      (tempo) =>
        `${beatSign(report.exercise.form)} = ${shown(tempo.value)}${targetBpm === null ? '' : ` (aim ${shown(targetBpm)})`}${drift(measures)}`,
    ),
    ...(chords
      ? []
      : [
          line(
            'Touch',
            'How long a key is still held when the next one sounds (connected), or how long the gap is (detached).',
            measures.touchMs,
            ({ value }) =>
              value >= 0
                ? `connected: notes overlap by ${withUnit(shown(value), 'ms')}`
                : `detached: gaps of ${withUnit(shown(-value), 'ms')}`,
          ),
        ]),
    tuningLine(report),
  ];
}

function notesLine(report: Report, exercise: Exercise): MeasureLine {
  const expected = exercise.steps.reduce((sum, step) => sum + step.notes.length, 0);
  const count = (verdict: string): number => report.notes.filter((note) => note.verdict === verdict).length;
  const extras = count('extra');
  const parts = [
    count('wrong') > 0 ? `${count('wrong')} wrong` : '',
    report.missed.length > 0 ? `${report.missed.length} missed` : '',
    report.unsure.length > 0 ? `${report.unsure.length} not sure` : '',
    extras > 0 ? `${extras} extra` : 'none extra',
  ].filter((part) => part !== '');
  return {
    term: 'Notes',
    figure: `${count('correct')} of ${expected}, ${listed(parts)}`,
    meaning:
      'Right notes of those written. Extra notes are those that answer no written one: a neighbour caught, a note ' +
      'struck again, or going back.',
    measured: true,
  };
}

function withoutCrossings(measures: Measures): string {
  const without = measures.evennessWithoutCrossingsPercent;
  if (!isMeasured(without) || measures.crossings.length === 0) return '';
  return `; without the crossings ${withUnit(shown(without.value, 1), '%')}`;
}

function crossingsLine(measures: Measures): MeasureLine {
  const directions = (['up', 'down'] as const).flatMap((direction) => {
    const delays = measures.crossings.filter((crossing) => crossing.direction === direction);
    return delays.length === 0
      ? []
      : [`${delayList(delays)} ${direction === 'up' ? 'going up' : 'coming down'}`];
  });
  return {
    term: 'Crossings',
    figure: directions.length > 0 ? directions.join('; ') : 'not measured: no crossing was heard whole',
    meaning:
      'How much longer the step into a crossing takes (thumb under, or a finger over the thumb) than the steps ' +
      'around it. Plus is late.',
    measured: directions.length > 0,
  };
}

function delayList(delays: readonly CrossingDelay[]): string {
  if (delays.length <= MOST_LISTED)
    return listed(delays.map(({ delayMs }) => withUnit(signed(delayMs), 'ms')));
  const all = delays.map(({ delayMs }) => delayMs);
  return `${signed(Math.min(...all))} to ${withUnit(signed(Math.max(...all)), 'ms')}`;
}

function chordLines(measures: Measures): readonly MeasureLine[] {
  return [
    line(
      'Chords struck as one',
      'From the first to the last note of a chord, the middle one of all chords. Up to 40 ms sounds as one.',
      measures.chordSpreadMs,
      (spread) => `${estimate(spread, 'ms', 0)} from first to last note`,
    ),
    line(
      'Changes of chord',
      'The slowest change against the usual one; 1 is no hesitation.',
      measures.changeHesitationRatio,
      ({ value }) => `the slowest takes ${shown(value, 1)} times the usual${silence(measures)}`,
    ),
    line(
      'Inner notes',
      'How loud the inner notes of the chords are against the outer ones.',
      measures.innerBalanceDb,
      ({ value }) =>
        `${withUnit(shown(Math.abs(value), 1), 'dB')} ${value > 0 ? 'louder' : 'softer'} than the outer`,
    ),
  ];
}

function silence({ changeGapMs: gap }: Measures): string {
  if (!isMeasured(gap)) return '';
  const amount = withUnit(shown(Math.abs(gap.value)), 'ms');
  return gap.value > 0 ? `; ${amount} of silence between chords` : `; chords held ${amount} into the next`;
}

function handLines({ leadMs, apartSdMs }: NonNullable<Measures['togetherness']>): readonly MeasureLine[] {
  return [
    line(
      'Hands together',
      'Which hand comes first, on the average, and how much that varies from step to step. Up to 40 ms sounds together; ' +
        'the louder hand comes some 25 ms sooner by itself.',
      leadMs,
      ({ value, plusMinus }) =>
        `${value < 0 ? 'left' : 'right'} first by ${estimate({ value: Math.abs(value), ...(plusMinus !== undefined && { plusMinus }) }, 'ms', 0)}` +
        (isMeasured(apartSdMs) ? `; varies by ${withUnit(shown(apartSdMs.value), 'ms')}` : ''),
    ),
  ];
}

function thumb(measures: Measures): string {
  const accent = measures.thumbAccentDb;
  if (!isMeasured(accent)) return '';
  const amount = withUnit(shown(Math.abs(accent.value), 1), 'dB');
  return `; the thumb ${amount} ${accent.value >= 0 ? 'louder' : 'softer'} than the others`;
}

function drift(measures: Measures): string {
  if (!isMeasured(measures.driftPercent)) return '';
  const { value, plusMinus = 0 } = measures.driftPercent;
  if (Math.abs(value) < Math.max(STEADY_PERCENT, 2 * plusMinus)) return ', steady';
  return `, ${withUnit(shown(Math.abs(value)), '%')} ${value > 0 ? 'slower' : 'faster'} by the end`;
}

function tuningLine(report: Report): MeasureLine {
  const { a4Hz, cents } = report.tuning;
  const off = Math.round(cents);
  const amount = withUnit(shown(Math.abs(off)), Math.abs(off) === 1 ? 'cent' : 'cents');
  const standing = off === 0 ? 'as a tuning fork' : `${amount} ${off < 0 ? 'flat' : 'sharp'}`;
  return {
    term: 'The piano',
    figure: `A = ${withUnit(shown(a4Hz, 1), 'Hz')}, ${standing}`,
    meaning: 'Where this piano stands as a whole. Nothing that you played: the listening follows it.',
    measured: true,
  };
}
