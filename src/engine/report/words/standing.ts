import { median } from '../../base/statistics.ts';
import { stepMs } from '../../exercise/index.ts';
import { evenAt, touchOutcome } from '../criteria/index.ts';
import type { Criteria } from '../criteria/index.ts';
import { isMeasured } from '../measures/index.ts';
import type { Figure, Report } from '../types.ts';

/** A report, or one that has no words yet. */
export type Figures = Omit<Report, 'words'>;

/** Notes wrong, missed or too many. */
export function faultCount(report: Figures): number {
  return report.notes.filter((note) => note.verdict !== 'correct').length + report.missed.length;
}

/** At the criterion: every note right, once, even, crossings in time, chords as one, and at the target tempo where there is one. */
export function atCriterion(report: Figures, criteria: Criteria, targetBpm: number | null): boolean {
  const { measures } = report;
  const within = (figure: Figure, bound: number): boolean => !isMeasured(figure) || figure.value <= bound;
  const tempo = measures.tempoBpm;
  const even = evenAt(criteria, isMeasured(tempo) ? stepMs(report.exercise, tempo.value) : null);
  return (
    faultCount(report) === 0 &&
    report.unsure.filter((note) => note.heldOver !== true).length <=
      criteria.unsureShare * report.notes.length &&
    isMeasured(measures.evennessPercent) &&
    measures.evennessPercent.value <= even.evennessPercent &&
    measures.crossings.every((crossing) => !crossing.late) &&
    within(measures.chordSpreadMs, criteria.chordSpreadMs) &&
    handsTogether(report, criteria) &&
    touchIsSo(report, criteria) &&
    !surelyUneven(report, criteria) &&
    (targetBpm === null || (isMeasured(tempo) && tempo.value >= targetBpm * (1 - criteria.tempoShare)))
  );
}

/** The touch asked for, as far as it was heard. */
function touchIsSo({ measures, exercise }: Figures, { touch, sureBy }: Criteria): boolean {
  const { touchMs, tempoBpm } = measures;
  if (touch === null || !isMeasured(touchMs) || !isMeasured(tempoBpm)) return true;
  return touchOutcome(touch, touchMs, stepMs(exercise, tempoBpm.value), sureBy) !== 'not-so';
}

/** More uneven in loudness than is asked for, where the keys of this piano are known. */
function surelyUneven({ measures }: Figures, { loudnessDb, sureBy }: Criteria): boolean {
  const { keysKnown, loudnessEvennessDb: uneven } = measures;
  if (loudnessDb === null || keysKnown !== true || !isMeasured(uneven)) return false;
  return uneven.value - sureBy * (uneven.plusMinus ?? 0) > loudnessDb;
}

/** The middle one of the steps has its hands within the criterion. */
function handsTogether({ measures }: Figures, criteria: Criteria): boolean {
  const apart = (measures.togetherness?.steps ?? []).map((step) => Math.abs(step.leftMinusRightMs));
  return (median(apart) ?? 0) <= criteria.handsApartMs;
}
