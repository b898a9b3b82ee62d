import { justNoticeableMs } from '../../../engine/index.ts';
import type { Exercise, Report } from '../../../engine/index.ts';
import { shown, signed, withUnit } from '../../kit/figures.ts';
import type { GraphFigure, GraphPoint } from '../../plots/graph/types.ts';
import type { Places } from './places.ts';

/** Each interval against the median, with the audible threshold as a band. */
export function timingFigure(report: Report, places: Places): GraphFigure {
  const { intervals, crossings } = report.measures;
  const medianMs = intervals[0] === undefined ? 0 : intervals[0].ioiMs - intervals[0].deviationMs;
  const audibleMs = justNoticeableMs(medianMs);
  const points = intervals.map(({ step, ioiMs, deviationMs, audible }): GraphPoint => {
    const crossing = crossings.find((one) => one.step === step);
    const late = deviationMs > 0 ? 'late' : 'early';
    return {
      step,
      spot: places.spotOf(step),
      value: deviationMs,
      name: places.nameOf(step),
      hand: null,
      look: audible,
      words:
        `${places.spokenOf(step)}: ${withUnit(shown(Math.abs(deviationMs)), 'ms')} ${late}` +
        `, after ${withUnit(shown(ioiMs), 'ms')}${crossing === undefined ? '' : ', a crossing'}` +
        (audible ? '' : ', too little to be heard'),
    };
  });
  return {
    id: 'timing',
    title: 'Timing, note by note',
    meaning:
      'How much later or earlier each note comes than it would at your usual step. In the grey band nobody can hear it.',
    definition:
      `The time from the note before, less the middle one of all such times (${withUnit(shown(medianMs), 'ms')}). The band is the least ` +
      `difference that can be heard in even notes: ${withUnit('6', 'ms')}, or 2.5 % of times above ${withUnit('240', 'ms')} (Friberg and Sundberg 1995); ` +
      'a note is marked only where it also stands out from the listening’s own error.',
    unit: 'ms',
    decimals: 0,
    base: 0,
    signed: true,
    band: { from: -audibleMs, to: audibleMs, words: 'not audible' },
    above: 'late',
    below: 'early',
    joined: false,
    points,
  };
}

/** The tempo along the attempt, each time over one beat (over one chord, where chords are a beat each). */
export function tempoFigure(report: Report, exercise: Exercise, places: Places): GraphFigure | null {
  const tempo = report.measures.tempoBpm;
  if (!('value' in tempo)) return null;
  const intervals = new Map(report.measures.intervals.map((interval) => [interval.step, interval.ioiMs]));
  const points = exercise.steps.flatMap(({ step, beat }): GraphPoint[] => {
    let from = step;
    let ms = 0;
    while (from > 0 && beat - exercise.steps[from]!.beat < 1 - 1e-6) {
      const ioiMs = intervals.get(from);
      if (ioiMs === undefined) return [];
      ms += ioiMs;
      from -= 1;
    }
    const beats = beat - exercise.steps[from]!.beat;
    if (beats < 1 - 1e-6 || ms <= 0) return [];
    const bpm = (60_000 * beats) / ms;
    const off = bpm / tempo.value - 1;
    return [
      {
        step,
        spot: places.spotOf(step),
        value: bpm,
        name: places.nameOf(step),
        hand: null,
        look: Math.abs(off) > FAR_SHARE,
        words: `${places.spokenOf(step)}: ${shown(bpm)} beats a minute, ${signed(100 * off)} per cent`,
      },
    ];
  });
  return {
    id: 'tempo',
    title: 'Tempo along the attempt',
    meaning: 'Where you hurry and where you hold back. The line across is your middle tempo.',
    definition:
      'Beats a minute over the beat that ends with each note: its beats by the time they took. The grey band is 2.5 % about the ' +
      'middle tempo, the least change that can be heard (Friberg and Sundberg 1995); more than 10 % away is marked.',
    unit: 'beats a minute',
    decimals: 0,
    base: tempo.value,
    signed: false,
    band: { from: tempo.value * 0.975, to: tempo.value * 1.025, words: 'not audible' },
    above: 'faster',
    below: 'slower',
    joined: true,
    points,
  };
}

/** A beat further than this from the middle tempo is worth a look. Common practice, no source. */
const FAR_SHARE = 0.1;
