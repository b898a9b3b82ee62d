import { mean, standardDeviation } from '../../base/statistics.ts';
import type { Figure, Togetherness } from '../types.ts';
import { notMeasured } from './estimate.ts';
import { spreadWithoutNoise } from './noise.ts';
import { DRAWN_TOGETHER, strikeVariance } from './ear-noise.ts';
import type { Strike } from './strikes.ts';

const LEAST_STEPS = 3;

/** What is drawn together shows less of the ear's own scatter: so much of its variance (1324 steps of the development piano). */
const SHOWS = 0.5;
/** Some of the ear's error is alike within an attempt, so that no number of steps averages it out: so much of its SD (108 attempts of the development piano). */
const ALIKE = 0.3;

/**
 * Togetherness: per step the mean onset of the left hand − the mean onset of the right, ms (negative: the left came first);
 * over the attempt its mean (who leads) and its SD, the listener's noise taken out of both ±. Order can be told apart from
 * about 20 ms (Hirsh 1959); a louder key arrives earlier by some 20–30 ms (Goebl 2001), so a small lead is no fault.
 */
export function togetherness(left: readonly Strike[], right: readonly Strike[]): Togetherness {
  const steps = left.flatMap((strike) => {
    const other = right.find((one) => one.step === strike.step);
    if (other === undefined) return [];
    const noise = handVariance(strike) + handVariance(other);
    return [{ step: strike.step, leftMinusRightMs: 1000 * (strike.timeSec - other.timeSec), noise }];
  });
  const apart = steps.map((one) => one.leftMinusRightMs);
  const lead = mean(apart);
  const said = steps.map(({ step, leftMinusRightMs }) => ({ step, leftMinusRightMs }));
  if (lead === undefined || steps.length < LEAST_STEPS) {
    const reason = notMeasured({ notice: 'needs-steps-of-both-hands' });
    return { leadMs: reason, apartSdMs: reason, steps: said, leftLouderDb: leftLouderDb(left, right) };
  }
  const noise = mean(steps.map((one) => one.noise))!;
  const { value, plusMinus = 0 } = spreadWithoutNoise(
    apart.map((one) => one - lead),
    { variance: SHOWS * noise, neighbours: 'apart' },
    steps.length - 1,
  );
  const alikeMs = ALIKE * Math.sqrt(noise);
  const drawnMs = (about: number): number => (noise === 0 ? 0 : DRAWN_TOGETHER * about);
  const spread = { value, plusMinus: Math.hypot(plusMinus, alikeMs, drawnMs(value)) };
  const leadSd = Math.hypot(
    Math.hypot(spread.value, Math.sqrt(noise)) / Math.sqrt(steps.length),
    alikeMs,
    drawnMs(lead),
  );
  return {
    leadMs: { value: lead, plusMinus: leadSd },
    apartSdMs: spread,
    steps: said,
    leftLouderDb: leftLouderDb(left, right),
  };
}

/** Keys of one hand's chord are heard early or late alike: so much of their variance (34 attempts of both hands' chords, development piano: 7 ms of error for 5 where they erred each by itself). */
const CHORD_ALIKE = 0.4;

/** Variance of the place of one hand's keys against the other's, ms². */
function handVariance({ notes }: Strike): number {
  return strikeVariance(notes) * (1 + CHORD_ALIKE * (notes.length - 1));
}

/**
 * Hands an octave apart share their partials, so that their levels err together, by so many times the ear's error of one note
 * (2.7 dB was the median error of 13 rendered attempts of the development piano).
 */
const SHARED_TIMES = 1.4;

/** Mean level of the left hand's right notes − the right hand's, dB; ± from the scatter of both, and from what they share. */
function leftLouderDb(left: readonly Strike[], right: readonly Strike[]): Figure {
  const [leftDb, rightDb] = [left, right].map((strikes) =>
    strikes.flatMap(({ notes }) => notes.filter((key) => key.right).map(({ played }) => played.levelDb)),
  );
  if (leftDb!.length < LEAST_STEPS || rightDb!.length < LEAST_STEPS)
    return notMeasured({ notice: 'needs-right-notes-of-each-hand' });
  const sharedDb = Math.max(...right.flatMap(({ notes }) => notes.map(({ levelSdDb }) => levelSdDb)));
  const variance = [leftDb!, rightDb!].map((levels) => standardDeviation(levels)! ** 2 / levels.length);
  return {
    value: mean(leftDb!)! - mean(rightDb!)!,
    plusMinus: Math.hypot(SHARED_TIMES * sharedDb, Math.sqrt(variance[0]! + variance[1]!)),
  };
}
