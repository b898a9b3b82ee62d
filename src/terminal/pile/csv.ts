import { tellWords } from '../../engine/index.ts';
import type { Estimate, Language, NotMeasured, Report } from '../../engine/index.ts';
import { localeOf } from '../language/index.ts';
import { leftOut } from './left-out.ts';
import type { Pile, PileAttempt } from './types.ts';
import { changedWords, exerciseOf, readingsOf, verdictOf } from './words.ts';

type Cell = string | number | null | undefined;

const COLUMNS = [
  'student',
  'file',
  'recorded',
  'start_s',
  'end_s',
  'exercise',
  'key',
  'form',
  'hands',
  'octaves',
  'octave_shift',
  'recognition_confidence',
  'likeliest',
  'verdict',
  'next_step',
  'changed',
  'right',
  'wrong',
  'missed',
  'extra',
  'unsure',
  'evenness_percent',
  'worst_crossing_ms',
  'loudness_evenness_db',
  'chord_spread_ms',
  'tempo_bpm',
  'drift_percent',
  'tuning_cents',
  'left_out',
] as const;

/**
 * A pile → a table of its attempts, one row each, by student and time, then what was left out, a row each with the reason (RFC 4180, UTF-8, a decimal point; units in the names of
 * the columns; empty where a figure could not be had). Cells that a spreadsheet would take for a formula get an apostrophe in
 * front (OWASP, "CSV Injection"): names of files come from outside.
 */
export function encodePile(pile: Pile, language: Language = 'en'): string {
  const rows = pile.students.flatMap(({ name, attempts }) =>
    attempts.map((attempt) => rowOf(name, attempt, language)),
  );
  const without = leftOut(pile, language).map(({ file, student, reason }): readonly Cell[] =>
    COLUMNS.map((column) => ({ student, file, left_out: reason })[column as string] ?? null),
  );
  return [COLUMNS, ...rows, ...without].map((row) => `${row.map(written).join(',')}\r\n`).join('');
}

function rowOf(student: string, attempt: PileAttempt, language: Language): readonly Cell[] {
  const { recording, found } = attempt;
  const { report, recognition } = found;
  return [
    student,
    recording.name,
    recording.whenMs === null ? null : new Date(recording.whenMs).toISOString(),
    found.startSec.toFixed(2),
    found.endSec.toFixed(2),
    exerciseOf(attempt, language),
    report?.exercise.key,
    report?.exercise.form,
    report?.exercise.hands,
    report?.exercise.octaves,
    report?.exercise.octaveShift,
    recognition.confidence.toFixed(2),
    readingsOf(found, language).join('; '),
    verdictOf(attempt, language),
    report && tellWords(report.words, localeOf(language)).nextStep,
    changedWords(attempt, language),
    ...(report === null ? NO_FIGURES : figuresOf(report)),
    null,
  ];
}

const NO_FIGURES: readonly Cell[] = COLUMNS.slice(COLUMNS.indexOf('right'), -1).map(() => null);

function figuresOf({ notes, missed, unsure, measures, tuning }: Report): readonly Cell[] {
  const count = (verdict: string): number => notes.filter((note) => note.verdict === verdict).length;
  const delays = measures.crossings.map(({ delayMs }) => delayMs);
  return [
    count('correct'),
    count('wrong'),
    missed.length,
    count('extra'),
    unsure.length,
    figure(measures.evennessPercent, 2),
    delays.length === 0 ? null : Math.max(...delays).toFixed(1),
    figure(measures.loudnessEvennessDb, 2),
    figure(measures.chordSpreadMs, 1),
    figure(measures.tempoBpm, 1),
    figure(measures.driftPercent, 1),
    tuning.cents.toFixed(1),
  ];
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
