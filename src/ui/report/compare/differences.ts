import {
  crossingsOf,
  DEFAULT_CRITERIA,
  faultCount,
  isMeasured,
  justNoticeableMs,
  lateCrossings,
} from '../../../engine/index.ts';
import type { Estimate, Figure, Report } from '../../../engine/index.ts';
import { shown, signed, withUnit } from '../../kit/figures.ts';
import { strings } from '../../language/index.ts';
import { shownName } from '../../names/index.ts';
import type { Compared } from './strings.ts';

/** One line of the table of differences. */
export interface DifferenceRow {
  readonly term: string;
  readonly before: string;
  readonly now: string;
  readonly change: string;
}

/** How many notes that turned right or wrong are named. */
const MOST_NAMED = 3;

/** As it stands in the table: what is read there must add up. */
const asShown = ({ value }: Estimate, decimals: number): number => Number(value.toFixed(decimals));

/** Two attempts → a table of their figures side by side. */
export function differenceRows(other: Compared, now: Compared): readonly DifferenceRow[] {
  const t = strings();
  const [a, b] = [other.report, now.report];
  const row = (
    term: string,
    before: Figure,
    after: Figure,
    unit: string,
    decimals: number,
  ): DifferenceRow => {
    const say = (figure: Figure): string =>
      isMeasured(figure) ? withUnit(shown(figure.value, decimals), unit) : t.compare.notMeasured;
    const change =
      isMeasured(before) && isMeasured(after)
        ? withUnit(signed(asShown(after, decimals) - asShown(before, decimals), decimals), unit)
        : '';
    return { term, before: say(before), now: say(after), change };
  };
  const both = (pick: (report: Report) => Figure): readonly [Figure, Figure] => [pick(a), pick(b)];
  const rows = [
    row(t.compare.mistakes, { value: faultCount(a) }, { value: faultCount(b) }, '', 0),
    row(t.measures.evenness.term, ...both(({ measures }) => measures.evennessPercent), '%', 1),
    row(t.measures.crossings.term, ...both(({ measures }) => measures.crossingDelayMs), 'ms', 0),
    row(t.measures.spread.term, ...both(({ measures }) => measures.chordSpreadMs), 'ms', 0),
    row(t.measures.loudness.term, ...both(({ measures }) => measures.loudnessEvennessDb), 'dB', 1),
    row(t.measures.tempo.term, ...both(({ measures }) => measures.tempoBpm), '', 0),
  ];
  // What neither attempt has is no difference.
  return rows.filter(({ before, now: after }) =>
    [before, after].some((said) => said !== t.compare.notMeasured),
  );
}

/** Two attempts → what is different, in words. Only what stands out from the ± of both is said. */
export function differenceWords(other: Compared, now: Compared): readonly string[] {
  const t = strings().compare;
  const [a, b] = [other.report.measures, now.report.measures];
  const words: string[] = [];
  const [wasWrong, isWrong] = [faultCount(other.report), faultCount(now.report)];
  if (isWrong < wasWrong) words.push(t.fewerMistakes(wasWrong, isWrong));
  if (isWrong > wasWrong) words.push(t.moreMistakes(wasWrong, isWrong));
  words.push(...turnedNotes(other, now));
  const percent = (value: number): string => withUnit(shown(value, 1), '%');
  const decibels = (value: number): string => withUnit(shown(value, 1), 'dB');
  words.push(
    ...changed(a.evennessPercent, b.evennessPercent, (before, after) =>
      (after < before ? t.moreEven : t.lessEven)(percent(before), percent(after)),
    ),
    ...crossingWords(other, now),
    ...changed(a.loudnessEvennessDb, b.loudnessEvennessDb, (before, after) =>
      (after < before ? t.louderEven : t.louderUneven)(decibels(before), decibels(after)),
    ),
  );
  if (isMeasured(a.tempoBpm) && isMeasured(b.tempoBpm)) {
    const [before, after] = [a.tempoBpm.value, b.tempoBpm.value];
    if (Math.abs(after / before - 1) > DEFAULT_CRITERIA.tempoShare)
      words.push((after > before ? t.faster : t.slower)(shown(before), shown(after)));
  }
  return words.length === 0 ? [t.same] : words;
}

/** Says a change that is larger than twice the ± of both figures together. */
function changed(
  before: Figure,
  after: Figure,
  say: (before: number, after: number) => string,
): readonly string[] {
  if (!isMeasured(before) || !isMeasured(after)) return [];
  const doubt = Math.hypot(before.plusMinus ?? 0, after.plusMinus ?? 0);
  const sure = Math.abs(after.value - before.value) > DEFAULT_CRITERIA.sureBy * doubt;
  return sure && before.value !== after.value ? [say(before.value, after.value)] : [];
}

function crossingWords(other: Compared, now: Compared): readonly string[] {
  const t = strings().compare;
  const late = [...lateCrossings(other.report), ...lateCrossings(now.report)];
  return crossingsOf(now.report).flatMap((after): readonly string[] => {
    const before = crossingsOf(other.report).find(
      (one) => one.step === after.step && one.hand === after.hand,
    );
    if (before === undefined || !late.some((one) => one === before || one === after)) return [];
    const doubt = DEFAULT_CRITERIA.sureBy * Math.hypot(before.plusMinusMs, after.plusMinusMs);
    const usualMs = after.ratio > 0 ? after.delayMs / Math.max(after.ratio - 1, 0.01) : 0;
    const change = Math.abs(after.delayMs) - Math.abs(before.delayMs);
    if (Math.abs(change) < Math.max(doubt, justNoticeableMs(Math.abs(usualMs)))) return [];
    const note = now.exercise.steps[after.step]?.notes.find(({ hand }) => hand === after.hand);
    const figures = [before.delayMs, after.delayMs].map((delay) => withUnit(signed(delay), 'ms'));
    const say = change < 0 ? t.crossingBetter : t.crossingWorse;
    return [say(shownName(note?.name ?? ''), after.step + 1, figures[0]!, figures[1]!)];
  });
}

/** Notes that are right in one attempt and not in the other. */
function turnedNotes(other: Compared, now: Compared): readonly string[] {
  const t = strings().compare;
  const right = ({ report }: Compared, step: number): boolean =>
    !report.missed.some((note) => note.step === step) &&
    !report.notes.some((note) => note.step === step && note.verdict === 'wrong') &&
    report.notes.some((note) => note.step === step && note.verdict === 'correct');
  const turned = now.exercise.steps.flatMap(({ step, notes }): readonly string[] => {
    const [before, after] = [right(other, step), right(now, step)];
    if (before === after) return [];
    const say = after ? t.noteNow : t.noteNoMore;
    return [say(shownName(notes[0]!.name), step + 1)];
  });
  return turned.slice(0, MOST_NAMED);
}
