import { median } from '../base/statistics.ts';
import { choiceIn, isWhole } from '../exercise/index.ts';
import { lateCrossings } from '../report/index.ts';
import type { Estimate, NotMeasured, Report } from '../report/index.ts';
import type { AttemptSummary, Uncertain } from './types.ts';

/** A stretch, or another rhythm, was to be practised: nothing of it tells whether the exercise is ready, whatever is said of it. */
const PRACTISED = 'practised';

export const isPractice = ({ situation }: Pick<AttemptSummary, 'situation'>): boolean =>
  situation === PRACTISED;

/** A report → the few figures by which readiness is judged. */
export function summarise(report: Report): AttemptSummary {
  const { measures } = report;
  const count = (verdict: string): number => report.notes.filter((note) => note.verdict === verdict).length;
  // A common tone of two chords that may have been held over is no note in doubt, and none that was struck.
  const unsure = report.unsure.filter((note) => note.heldOver !== true).length;
  const [correct, wrong] = [count('correct'), count('wrong')];
  const delays = measures.crossings.map((crossing) => crossing.delayMs);
  const apart = (measures.togetherness?.steps ?? []).map((step) => Math.abs(step.leftMinusRightMs));
  return {
    exercise: choiceIn(report.exercise),
    targetBpm: report.targetBpm,
    expected: correct + wrong + report.missed.length + unsure,
    wrong,
    missed: report.missed.length,
    extra: count('extra'),
    unsure,
    evennessPercent: valueOf(measures.evennessPercent),
    tempoBpm: valueOf(measures.tempoBpm),
    lateCrossings: lateCrossings(report).length,
    worstCrossingMs: delays.length === 0 ? null : Math.max(...delays),
    chordSpreadMs: valueOf(measures.chordSpreadMs),
    handsApartMs: median(apart) ?? null,
    ...(measures.keysKnown === true && uncertain('loudnessDb', measures.loudnessEvennessDb)),
    ...uncertain('overlapMs', measures.touchMs),
    situation: isWholeIn(report) ? report.words.situation : PRACTISED,
    ...practisedIn(report),
  };
}

function practisedIn(report: Report): Pick<AttemptSummary, 'practised'> {
  const { practised, words } = report;
  if (practised === undefined || isWholeIn(report)) return {};
  const done = (words.said?.statements ?? []).some(
    (one) => one.situation === 'practised' && one.outcome === 'done',
  );
  return { practised: { intention: practised.intention, done } };
}

/** Nothing else was asked for than the exercise itself. */
function isWholeIn({ practised }: Report): boolean {
  return practised === undefined || isWhole(practised.intention);
}

function uncertain<Name extends string>(
  name: Name,
  figure: Estimate | NotMeasured,
): Partial<Record<Name, Uncertain>> {
  if (!('value' in figure)) return {};
  const { value, plusMinus = 0 } = figure;
  return { [name]: { value, plusMinus } } as Record<Name, Uncertain>;
}

function valueOf(figure: Estimate | NotMeasured): number | null {
  return 'value' in figure ? figure.value : null;
}
