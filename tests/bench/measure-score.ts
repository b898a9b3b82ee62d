import type { Measures, Report } from '../../src/engine/index.ts';
import { buildExercise } from '../../src/engine/index.ts';
import { median } from '../../src/engine/base/statistics.ts';
import type { Truth } from '../support/render.ts';
import { trueMeasures } from './truth-report.ts';

/** Reported figure − true one; null where either could not be measured. */
export interface MeasureErrors {
  readonly evennessPp: number | null;
  /** one for every crossing that both have */
  readonly crossingsMs: readonly number[];
  readonly chordSpreadMs: number | null;
  /** one for every chord that both have */
  readonly chordSpreadsMs: readonly number[];
  readonly innerBalanceDb: number | null;
  readonly changeGapMs: number | null;
  readonly thumbAccentDb: number | null;
  readonly loudnessEvennessDb: number | null;
  /** hands together: who leads, and how much that varies */
  readonly leadMs: number | null;
  readonly apartSdMs: number | null;
  /** left − right of each step that both have */
  readonly togetherMs: readonly number[];
  readonly touchMs: number | null;
  readonly tempoPercent: number | null;
}

type Figure = { readonly value: number } | { readonly notMeasured: string };
type FigureOf = (measures: Measures) => Figure | undefined;

const valueOf = (figure: Figure | undefined): number | null =>
  figure !== undefined && 'value' in figure ? figure.value : null;

export function measureErrors(report: Report, truth: Truth): MeasureErrors {
  const ideal = trueMeasures(truth);
  const error = (of: FigureOf): number | null => {
    const [is, ought] = [valueOf(of(report.measures)), valueOf(of(ideal))];
    return is === null || ought === null ? null : is - ought;
  };
  const evenness = trueEvennessPercent(truth);
  const reported = valueOf(report.measures.evennessPercent);
  const bpm = valueOf(ideal.tempoBpm);
  const bpmError = error((measures) => measures.tempoBpm);
  return {
    evennessPp: evenness === null || reported === null ? null : reported - evenness,
    crossingsMs: report.measures.crossings.flatMap(({ step, hand, delayMs }) => {
      const same = ideal.crossings.find((other) => other.step === step && other.hand === hand);
      return same ? [delayMs - same.delayMs] : [];
    }),
    chordSpreadMs: error((measures) => measures.chordSpreadMs),
    chordSpreadsMs: report.measures.chords.flatMap(({ step, hand, spreadMs }) => {
      const same = ideal.chords.find((other) => other.step === step && other.hand === hand);
      return same ? [spreadMs - same.spreadMs] : [];
    }),
    innerBalanceDb: error((measures) => measures.innerBalanceDb),
    changeGapMs: error((measures) => measures.changeGapMs),
    thumbAccentDb: error((measures) => measures.thumbAccentDb),
    loudnessEvennessDb: error((measures) => measures.loudnessEvennessDb),
    leadMs: error((measures) => measures.togetherness?.leadMs),
    apartSdMs: error((measures) => measures.togetherness?.apartSdMs),
    togetherMs: (report.measures.togetherness?.steps ?? []).flatMap(({ step, leftMinusRightMs }) => {
      const same = ideal.togetherness?.steps.find((other) => other.step === step);
      return same ? [leftMinusRightMs - same.leftMinusRightMs] : [];
    }),
    touchMs: error((measures) => measures.touchMs),
    tempoPercent: bpm === null || bpmError === null ? null : (100 * bpmError) / bpm,
  };
}

/**
 * Evenness of a single-handed attempt by its definition (src/engine/report/measures/README.md): 100 · SD(q) / mean(q), q = time between consecutive
 * steps / beats between them, both steps struck, no repeat or restart between. Null of fewer than three intervals.
 */
export function trueEvennessPercent(truth: Truth): number | null {
  if (truth.exercise.hands === 'together') return null;
  const beats = buildExercise(truth.exercise).steps.map(({ beat }) => beat);
  const onsetsSec = beats.map((_, step) => {
    const struck = truth.notes.filter((note) => note.step === step && note.verdict !== 'extra');
    return struck.length === 0 ? null : struck.reduce((sum, note) => sum + note.timeSec, 0) / struck.length;
  });
  const broken = truth.notes
    .filter(({ extraKind }) => extraKind === 'repeat' || extraKind === 'restart')
    .map((note) => note.timeSec);
  const intervals = onsetsSec.slice(1).flatMap((onsetSec, index) => {
    const before = onsetsSec[index]!;
    if (onsetSec === null || before === null) return [];
    if (broken.some((timeSec) => timeSec > before && timeSec < onsetSec)) return [];
    return [(onsetSec - before) / (beats[index + 1]! - beats[index]!)];
  });
  if (intervals.length < 3) return null;
  const mean = intervals.reduce((sum, value) => sum + value, 0) / intervals.length;
  const variance = intervals.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (intervals.length - 1);
  return (100 * Math.sqrt(variance)) / mean;
}

/** Heard − true level of matched notes, with a straight line over pitch taken out: a microphone's colour is no error of loudness. */
export function levelResidualsDb(
  notes: readonly { readonly midi: number; readonly errorDb: number }[],
): readonly number[] {
  if (notes.length < 4) return [];
  const centre = notes.reduce((sum, { midi }) => sum + midi, 0) / notes.length;
  const middle = median(notes.map(({ errorDb }) => errorDb))!;
  const spread = notes.reduce((sum, { midi }) => sum + (midi - centre) ** 2, 0);
  const slope =
    spread === 0
      ? 0
      : notes.reduce((sum, { midi, errorDb }) => sum + (midi - centre) * (errorDb - middle), 0) / spread;
  const straight = notes.map(({ midi, errorDb }) => errorDb - slope * (midi - centre));
  const mean = straight.reduce((sum, value) => sum + value, 0) / straight.length;
  return straight.map((value) => value - mean);
}
