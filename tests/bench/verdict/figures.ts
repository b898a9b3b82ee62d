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
  'hands: who leads, ms': (one) => one.togetherness?.leadMs,
  'hands: scatter, ms': (one) => one.togetherness?.apartSdMs,
  'worst change, ratio': (one) => one.changeHesitationRatio,
  'gap at changes, ms': (one) => one.changeGapMs,
};

/** Figures of loudness, of which the truth is the force of the blows. */
const BY_FORCE: Readonly<Record<string, FigureOf>> = {
  'loudness evenness, dB': (one) => one.loudnessEvennessDb,
  'thumb accent, dB': (one) => one.thumbAccentDb,
  'ends, dB': (one) => one.endsFadeDb,
  'inner notes, dB': (one) => one.innerBalanceDb,
  'left hand louder, dB': (one) => one.togetherness?.leftLouderDb,
};

/** A report and the truth → the error of each figure that both have. */
export function figureErrors(report: Report, truth: Truth, shaped: boolean): readonly FigureError[] {
  const asSounded = trueMeasures(truth);
  const asStruck = trueMeasures(byForce(truth));
  return [
    ...errorsOf(report.measures, asSounded, FIGURES, ''),
    ...errorsOf(report.measures, asSounded, BY_FORCE, ' (as it arrives)'),
    ...errorsOf(report.measures, asStruck, BY_FORCE, ' (by force)'),
    ...crossingErrors(report.measures, asSounded),
    ...(shaped ? [] : driftErrors(report.measures, truth)),
  ];
}

/** Against the drift that the player meant: what chance makes of it is part of its ±, since the words ask whether it was one. */
function driftErrors({ driftPercent: told }: Measures, { student }: Truth): readonly FigureError[] {
  if (!('value' in told) || told.plusMinus === undefined) return [];
  const meant = student.driftPercent / (1 - student.driftPercent / 200);
  return [{ name: 'drift, % (as meant)', error: told.value - meant, plusMinus: told.plusMinus }];
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
