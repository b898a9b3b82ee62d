import { tellWords } from '../../engine/index.ts';
import type { Estimate, Language, NotMeasured, Report } from '../../engine/index.ts';
import { localeOf } from '../language/index.ts';
import { time } from './json.ts';
import { leftOut } from './left-out.ts';
import type { Pile, PileAttempt } from './types.ts';
import { changedWords, exerciseOf, readingsOf, verdictOf } from './words.ts';

type Cell = string | number | null | undefined;

/** An attempt in its row. */
interface Row extends PileAttempt {
  readonly student: string;
  readonly language: Language;
}

/** Of an attempt that was measured. */
const told =
  (tell: (report: Report, language: Language) => Cell) =>
  ({ found: { report }, language }: Row): Cell =>
    report === null ? null : tell(report, language);
const counted = (verdict: string) =>
  told(({ notes }) => notes.filter((note) => note.verdict === verdict).length);
const figured = (of: (measures: Report['measures']) => Estimate | NotMeasured, decimals: number) =>
  told(({ measures }) => figure(of(measures), decimals));

const COLUMNS: readonly (readonly [name: string, cell: (row: Row) => Cell])[] = [
  ['student', ({ student }) => student],
  ['file', ({ recording }) => recording.name],
  ['recorded', ({ recording }) => time(recording.whenMs)],
  ['start_s', ({ found }) => found.startSec.toFixed(2)],
  ['end_s', ({ found }) => found.endSec.toFixed(2)],
  ['exercise', (row) => exerciseOf(row, row.language)],
  ['key', told(({ exercise }) => exercise.key)],
  ['form', told(({ exercise }) => exercise.form)],
  ['hands', told(({ exercise }) => exercise.hands)],
  ['octaves', told(({ exercise }) => exercise.octaves)],
  ['octave_shift', told(({ exercise }) => exercise.octaveShift)],
  ['recognition_confidence', ({ found }) => found.recognition.confidence.toFixed(2)],
  ['likeliest', ({ found, language }) => readingsOf(found, language).join('; ')],
  ['verdict', (row) => verdictOf(row, row.language)],
  ['next_step', told(({ words }, language) => tellWords(words, localeOf(language)).nextStep)],
  ['changed', (row) => changedWords(row, row.language)],
  ['right', counted('correct')],
  ['wrong', counted('wrong')],
  ['missed', told(({ missed }) => missed.length)],
  ['extra', counted('extra')],
  ['unsure', told(({ unsure }) => unsure.length)],
  ['evenness_percent', figured(({ evennessPercent }) => evennessPercent, 2)],
  [
    'worst_crossing_ms',
    told(({ measures: { crossings } }) =>
      crossings.length === 0 ? null : Math.max(...crossings.map(({ delayMs }) => delayMs)).toFixed(1),
    ),
  ],
  ['loudness_evenness_db', figured(({ loudnessEvennessDb }) => loudnessEvennessDb, 2)],
  ['chord_spread_ms', figured(({ chordSpreadMs }) => chordSpreadMs, 1)],
  ['tempo_bpm', figured(({ tempoBpm }) => tempoBpm, 1)],
  ['drift_percent', figured(({ driftPercent }) => driftPercent, 1)],
  ['tuning_cents', told(({ tuning }) => tuning.cents.toFixed(1))],
  ['left_out', () => null],
];

/**
 * A pile → a table of its attempts, one row each, by student and time, then what was left out, a row each with the reason (RFC 4180,
 * UTF-8, a decimal point; units in the names of the columns; empty where a figure could not be had). Cells that a spreadsheet would
 * take for a formula get an apostrophe in front (OWASP, "CSV Injection"): names of files come from outside.
 */
export function encodePile(pile: Pile, language: Language = 'en'): string {
  const rows = pile.students.flatMap(({ name: student, attempts }) =>
    attempts.map((attempt) => COLUMNS.map(([, cell]) => cell({ ...attempt, student, language }))),
  );
  const without = leftOut(pile, language).map(({ file, student, reason }) => {
    const cells: Readonly<Record<string, Cell>> = { file, student, left_out: reason };
    return COLUMNS.map(([name]) => cells[name]);
  });
  const lines: readonly (readonly Cell[])[] = [COLUMNS.map(([name]) => name), ...rows, ...without];
  return lines.map((row) => `${row.map(written).join(',')}\r\n`).join('');
}

function figure(value: Estimate | NotMeasured, decimals: number): Cell {
  return 'value' in value ? value.value.toFixed(decimals) : null;
}

/** A negative number is no formula. */
const NUMBER = /^-?\d+(\.\d+)?$/;

function written(cell: Cell): string {
  // A name may hold what a terminal obeys, and a CSV is shown on one.
  const text = String(cell ?? '').replace(/(?![\t\r\n])\p{Cc}/gu, '');
  const safe = /^[=+\-@\t\r\n]/.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
