import { mean, median, standardDeviation } from '../../base/statistics.ts';
import type { Rhythm } from '../../exercise/index.ts';
import type { Interval, Shape } from '../measures/index.ts';
import { LEAST_WITH_SHAPE, lineThrough, shapeOfTime } from '../measures/index.ts';
import type { Found, Scene, Situation, Situations } from './scene.ts';

/*
 * What is meant and not a fault: an ending that slows, a broad last note, a rhythm over the whole, a tempo that sways. It is
 * named as such, and what it does to the figures is not blamed. Bounds are common practice, no source, unless said.
 */

/**
 * Two lengths in a rhythm stand apart by over this; less is limping: the mildest rhythm that is practised, 2 : 1, is hardly played
 * under 1.7 : 1 (common practice, no source).
 */
const RHYTHM_APART = 0.7;
/** A sway is smooth: what is left between neighbours is this share of the whole, at most. */
const ROUGH_SHARE = 0.65;
/** Over so many intervals a sway is smoothed. */
const SMOOTHED_OVER = 5;

/** The attempt without its ending, and the ending by itself. */
export const shapeOf = ({ measured, criteria }: Scene): Shape => shapeOfTime(measured.unbroken, criteria);

const slowsToTheEnd: Situation = (scene) => {
  const { body, ending } = shapeOf(scene);
  if (ending.length < 2) return null;
  const bpm = (interval: Interval[] | readonly Interval[]): number =>
    Math.round(60_000 / mean(interval.map(({ perBeatMs }) => perBeatMs))!);
  return {
    statement: {
      situation: 'slows-to-the-end',
      steps: ending.map(({ step }) => step),
      faults: 0,
      fromBpm: bpm(body),
      toBpm: bpm(ending.slice(-1)),
    },
    advice: { step: 'if-meant' },
  };
};

const broadLastNote: Situation = (scene) => {
  const { body, ending } = shapeOf(scene);
  const [last] = ending;
  if (last === undefined || ending.length > 1) return null;
  if (scene.measured.measures.crossings.some(({ step, late }) => late && step === last.step)) return null;
  const usual = median(body.map(({ perBeatMs }) => perBeatMs))! * last.beats;
  return {
    statement: {
      situation: 'broad-last-note',
      steps: [last.step],
      faults: 0,
      lateMs: Math.round(last.ioiMs - usual),
    },
    advice: { step: 'if-meant' },
  };
};

/** Every other interval longer, nearly all through; null: no pairs. */
export function pairsOf(
  scene: Scene,
): { readonly rhythm: 'long-short' | 'short-long'; readonly apart: number } | null {
  const intervals = scene.measured.unbroken;
  if (intervals.length < LEAST_WITH_SHAPE - 2) return null;
  const of = (rest: number): number[] =>
    intervals.filter((interval) => interval.fromStep % 2 === rest).map((interval) => interval.perBeatMs);
  const [first, second] = [of(0), of(1)];
  const [a, b] = [median(first), median(second)];
  if (a === undefined || b === undefined) return null;
  const [longer, shorter] = a > b ? [first, second] : [second, first];
  const middle = (a + b) / 2;
  const steady = [...longer.map((value) => value > middle), ...shorter.map((value) => value < middle)];
  const share = steady.filter(Boolean).length / steady.length;
  if (share < scene.criteria.pairsShare) return null;
  return { rhythm: a > b ? 'long-short' : 'short-long', apart: Math.abs(a - b) / Math.min(a, b) };
}

/** Far apart: a rhythm, and not limping. */
export const isRhythm = (pairs: { readonly apart: number }): boolean => pairs.apart > RHYTHM_APART;

/** A rhythm over the whole, as exercises are practised in. */
const inPairs: Situation = (scene) => {
  const pairs = pairsOf(scene);
  return pairs === null || !isRhythm(pairs) ? null : inARhythm(pairs.rhythm);
};

export const inARhythm = (rhythm: Rhythm): Found => ({
  statement: { situation: 'in-a-rhythm', steps: [], faults: 0, rhythm },
  advice: { step: 'if-meant' },
});

/** Faster and slower over many notes while neighbours stay alike: the tempo sways, as in a rubato. */
export function swayOf(scene: Scene): { readonly slowBpm: number; readonly fastBpm: number } | null {
  const { body } = shapeOf(scene);
  if (body.length < LEAST_WITH_SHAPE + 2) return null;
  const values = body.map(({ perBeatMs }) => perBeatMs);
  const smooth = smoothed(values);
  const percent = (100 * standardDeviation(values)!) / mean(values)!;
  if (percent <= scene.criteria.unevenPercent / 2 || isRough(values, ROUGH_SHARE)) return null;
  const line = lineThrough(
    body.map(({ atBeat }) => atBeat),
    values,
  );
  if (line === undefined || isRough(line.residuals, ROUGH_BY_CHANCE)) return null;
  const [fast, slow] = [Math.min(...smooth), Math.max(...smooth)];
  const turns = smooth.indexOf(fast) !== 0 && smooth.indexOf(fast) !== smooth.length - 1;
  const turnsBack = smooth.indexOf(slow) !== 0 && smooth.indexOf(slow) !== smooth.length - 1;
  if (!turns && !turnsBack) return null;
  return { slowBpm: Math.round(60_000 / slow), fastBpm: Math.round(60_000 / fast) };
}

/**
 * What is left between neighbours, as a share of the whole: 0.9 of values by chance (√(1 − 1/5)), more of what a straight line leaves of a
 * drift, since that is the fingers' own scatter: a note that comes late makes one interval longer and the next shorter (Wing &
 * Kristofferson 1973, memory). Of 4000 simulated players each 0.7 % of drifts lie under it and 99.8 % of rubatos that look like one.
 */
const ROUGH_BY_CHANCE = 0.9;

/** Whether of what these values differ by at least that share lies between neighbours. */
function isRough(values: readonly number[], share: number): boolean {
  const smooth = smoothed(values);
  const rough = standardDeviation(values.map((value, index) => value - smooth[index]!))!;
  return rough >= share * standardDeviation(values)!;
}

function smoothed(values: readonly number[]): readonly number[] {
  const half = (SMOOTHED_OVER - 1) / 2;
  return values.map((_, index) => mean(values.slice(Math.max(0, index - half), index + half + 1))!);
}

const tempoSways: Situation = (scene) => {
  const sway = swayOf(scene);
  if (sway === null) return null;
  return {
    statement: { situation: 'tempo-sways', steps: [], faults: 0, ...sway },
    advice: { step: 'if-meant' },
  };
};

export const MEANT: Situations = {
  'slows-to-the-end': slowsToTheEnd,
  'broad-last-note': broadLastNote,
  'in-a-rhythm': inPairs,
  'tempo-sways': tempoSways,
};
