import type { Measures, Report } from '../../../src/engine/index.ts';
import type { Truth } from '../../support/render.ts';
import { trueMeasures } from '../truth-report.ts';
import { byForce } from './truth.ts';

/** A figure of a report against the true one, both in its own unit. */
export interface FigureError {
  readonly name: string;
  readonly error: number;
  readonly plusMinus: number;
}

type Figure = Measures['evennessPercent'];
type FigureOf = (measures: Measures) => Figure | undefined;

/** Figures whose truth is in the strokes and their sound. */
const FIGURES: Readonly<Record<string, FigureOf>> = {
  'evenness, %': (one) => one.evennessPercent,
  'evenness, drift removed, %': (one) => one.evennessDriftRemovedPercent,
  'evenness without crossings, %': (one) => one.evennessWithoutCrossingsPercent,
  nPVI: (one) => one.npvi,
  'interval after the turn, ms': (one) => one.turnDeviationMs,
  'last interval, ms': (one) => one.lastIntervalDeviationMs,
  'mean crossing, ms': (one) => one.crossingDelayMs,
  'tempo, beats a minute': (one) => one.tempoBpm,
  'touch, ms': (one) => one.touchMs,
  'chord spread, ms': (one) => one.chordSpreadMs,
  'hands: scatter, ms': (one) => one.togetherness?.apartSdMs,
  'worst change, ratio': (one) => one.changeHesitationRatio,
  'gap at changes, ms': (one) => one.changeGapMs,
};

/** Figures of loudness, told as the sound arrives; what the piano adds to the force of the blows is not in their ±. */
const AS_IT_ARRIVES: Readonly<Record<string, FigureOf>> = {
  'loudness evenness, dB': (one) => one.loudnessEvennessDb,
  'ends, dB': (one) => one.endsFadeDb,
  'inner notes, dB': (one) => one.innerBalanceDb,
  'left hand louder, dB': (one) => one.togetherness?.leftLouderDb,
};

/** … and the one that is told of the player, what the piano's keys differ by being in its ±. */
const BY_FORCE: Readonly<Record<string, FigureOf>> = { 'thumb accent, dB': (one) => one.thumbAccentDb };

/** A report and the truth → the error of each figure that both have. */
export function figureErrors(report: Report, truth: Truth, shaped: boolean): readonly FigureError[] {
  const asSounded = trueMeasures(truth);
  const asStruck = trueMeasures(byForce(truth));
  return [
    ...errorsOf(report.measures, asSounded, FIGURES, ''),
    ...errorsOf(report.measures, asSounded, AS_IT_ARRIVES, ' (as it arrives)'),
    ...errorsOf(report.measures, asStruck, AS_IT_ARRIVES, ' (by force: not claimed)'),
    ...errorsOf(report.measures, asSounded, BY_FORCE, ' (as it arrives: not claimed)'),
    ...errorsOf(report.measures, asStruck, BY_FORCE, ' (by force)'),
    ...crossingErrors(report.measures, asSounded),
    ...(shaped ? [] : driftErrors(report.measures, truth)),
    ...leadErrors(report.measures, truth),
  ];
}

/** Against the drift that the player meant: what chance makes of it is part of its ±, since the words ask whether it was one. */
function driftErrors({ driftPercent: told }: Measures, { student }: Truth): readonly FigureError[] {
  if (!('value' in told) || told.plusMinus === undefined) return [];
  const meant = student.driftPercent / (1 - student.driftPercent / 200);
  return [{ name: 'drift, % (as meant)', error: told.value - meant, plusMinus: told.plusMinus }];
}

/** … and against the lead that the player meant; the player's is that of the left hand. */
function leadErrors({ togetherness }: Measures, { student }: Truth): readonly FigureError[] {
  const told = togetherness?.leadMs;
  if (told === undefined || !('value' in told) || told.plusMinus === undefined) return [];
  const error = told.value + student.handsApartMs.mean;
  return [{ name: 'hands: who leads, ms (as meant)', error, plusMinus: told.plusMinus }];
}

function errorsOf(
  told: Measures,
  truth: Measures,
  figures: Readonly<Record<string, FigureOf>>,
  of: string,
): readonly FigureError[] {
  return Object.entries(figures).flatMap(([name, figureOf]): FigureError[] => {
    const [is, ought] = [figureOf(told), figureOf(truth)];
    if (is === undefined || ought === undefined || 'notMeasured' in is || 'notMeasured' in ought) return [];
    if (is.plusMinus === undefined) return [];
    return [{ name: name + of, error: is.value - ought.value, plusMinus: is.plusMinus }];
  });
}

function crossingErrors(told: Measures, truth: Measures): readonly FigureError[] {
  return told.crossings.flatMap(({ step, hand, delayMs, plusMinusMs }): FigureError[] => {
    const same = truth.crossings.find((other) => other.step === step && other.hand === hand);
    if (same === undefined) return [];
    return [{ name: 'each crossing, ms', error: delayMs - same.delayMs, plusMinus: plusMinusMs }];
  });
}
