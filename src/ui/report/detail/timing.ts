import { beatsPerStep, crossingsOf, justNoticeableMs } from '../../../engine/index.ts';
import type { Exercise, Report } from '../../../engine/index.ts';
import { shown, signed, withUnit } from '../../kit/figures.ts';
import { strings } from '../../language/index.ts';
import type { GraphFigure, GraphPoint } from '../../plots/graph/types.ts';
import type { Places } from './places.ts';

/** A change of tempo smaller than this cannot be heard (Friberg & Sundberg 1995: 2.5 % of the interval). */
const AUDIBLE_SHARE = 0.025;
/** A beat further than this from the middle tempo is worth a look. Common practice, no source. */
const FAR_SHARE = 0.1;

const ms = (value: number): string => withUnit(shown(value), 'ms');

/** Each note against its even place, with the audible threshold as a band. */
export function timingFigure(report: Report, exercise: Exercise, places: Places): GraphFigure {
  const t = strings().detail.timing;
  const { intervals, tempoBpm } = report.measures;
  const crossings = crossingsOf(report);
  const stepMs = 'value' in tempoBpm ? (60_000 / tempoBpm.value) * beatsPerStep(exercise) : 0;
  const audibleMs = justNoticeableMs(stepMs);
  const points = intervals.map(({ step, ioiMs, deviationMs, audible }): GraphPoint => {
    const say = deviationMs > 0 ? t.late : t.early;
    const said = say(places.spokenOf(step), ms(Math.abs(deviationMs)), ms(ioiMs));
    return {
      step,
      spot: places.spotOf(step),
      value: deviationMs,
      name: places.nameOf(step),
      hand: null,
      look: audible,
      words:
        said + (crossings.some((one) => one.step === step) ? t.crossing : '') + (audible ? '' : t.inaudible),
    };
  });
  return {
    id: 'timing',
    title: t.title,
    meaning: t.meaning,
    definition: t.definition(ms(stepMs)),
    unit: 'ms',
    decimals: 0,
    base: 0,
    signed: true,
    band: { from: -audibleMs, to: audibleMs, words: t.band },
    above: t.above,
    below: t.below,
    joined: false,
    points,
  };
}

/** The tempo along the attempt, each time over one beat (over one chord, where chords are a beat each). */
export function tempoFigure(report: Report, exercise: Exercise, places: Places): GraphFigure | null {
  const t = strings().detail.tempo;
  const tempo = report.measures.tempoBpm;
  if (!('value' in tempo)) return null;
  const intervals = new Map(report.measures.intervals.map(({ step, ioiMs }) => [step, ioiMs]));
  const points = exercise.steps.flatMap(({ step, beat }): GraphPoint[] => {
    const bpm = beatEndingAt(step, exercise, intervals);
    if (bpm === null || beat < 1) return [];
    const off = bpm / tempo.value - 1;
    return [
      {
        step,
        spot: places.spotOf(step),
        value: bpm,
        name: places.nameOf(step),
        hand: null,
        look: Math.abs(off) > FAR_SHARE,
        words: t.point(places.spokenOf(step), shown(bpm), signed(100 * off)),
      },
    ];
  });
  return {
    id: 'tempo',
    title: t.title,
    meaning: t.meaning,
    definition: t.definition,
    unit: t.unit,
    decimals: 0,
    base: tempo.value,
    signed: false,
    band: {
      from: tempo.value * (1 - AUDIBLE_SHARE),
      to: tempo.value * (1 + AUDIBLE_SHARE),
      words: t.band,
    },
    above: t.above,
    below: t.below,
    joined: true,
    points,
  };
}

/** Beats a minute over the steps of the beat that ends with `step`; null where one of its intervals was not heard whole. */
function beatEndingAt(
  step: number,
  exercise: Exercise,
  intervals: ReadonlyMap<number, number>,
): number | null {
  const beatOf = (at: number): number => exercise.steps[at]!.beat;
  let from = step;
  let wholeMs = 0;
  while (from > 0 && beatOf(step) - beatOf(from) < 1 - 1e-6) {
    const ioiMs = intervals.get(from);
    if (ioiMs === undefined) return null;
    wholeMs += ioiMs;
    from -= 1;
  }
  return wholeMs > 0 ? (60_000 * (beatOf(step) - beatOf(from))) / wholeMs : null;
}
