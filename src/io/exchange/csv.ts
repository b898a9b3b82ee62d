import type { Hand, Report } from '../../engine/index.ts';
import { inOrder, type PlacedNote } from './order.ts';

const COLUMNS = [
  'step',
  'hand',
  'finger',
  'heard',
  'note',
  'midi',
  'wanted_note',
  'wanted_midi',
  'time_s',
  'release_s',
  'level_db',
  'confidence',
  'interval_ms',
  'deviation_ms',
  'crossing',
  'crossing_late_ms',
] as const;

/** How a spreadsheet takes its figures: in English with points between commas, in German with commas between semicolons. */
export type Spreadsheet = 'point' | 'comma';

export interface CsvOptions {
  /** `comma` has the mark of byte order before it too, without which such programs read no ♯ */
  readonly spreadsheet: Spreadsheet;
  /** a note's name, e.g. "G#4", as it is to be written */
  readonly nameOf: (name: string) => string;
}
const CSV_DEFAULTS: CsvOptions = { spreadsheet: 'point', nameOf: (name) => name };

/** Unicode 16.0, 23.8: says that what follows is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** A figure with its decimals; a text; nothing. */
type Cell = string | number | readonly [value: number, decimals: number] | null | undefined;

/**
 * Report → its notes as separated values (RFC 4180, UTF-8): one line a note in order of time, what is missed and what is unsure in its
 * place. Steps count from 0, as in the report's JSON; times are exact to 0.1 ms. Interval, deviation and crossing stand at each right
 * note of the step that they lead into.
 */
export function encodeCsv(report: Report, options: Partial<CsvOptions> = {}): string {
  const { spreadsheet, nameOf } = { ...CSV_DEFAULTS, ...options };
  const comma = spreadsheet === 'comma';
  const separator = comma ? ';' : ',';
  const written = (cell: Cell): string => {
    if (cell === null || cell === undefined) return '';
    if (typeof cell === 'string') return quoted(cell, separator);
    const digits = typeof cell === 'number' ? String(cell) : cell[0].toFixed(cell[1]);
    return comma ? digits.replace('.', ',') : digits;
  };
  const lines: readonly (readonly Cell[])[] = [
    COLUMNS,
    ...inOrder(report).map((placed) => lineOf(placed, report, nameOf)),
  ];
  const text = lines.map((line) => `${line.map(written).join(separator)}\r\n`).join('');
  return comma ? BYTE_ORDER_MARK + text : text;
}

function lineOf(placed: PlacedNote, report: Report, nameOf: CsvOptions['nameOf']): readonly Cell[] {
  const silent = [null, null, null, null, null, null, null, null];
  if (placed.kind === 'missed') {
    const { step, hand, name, midi } = placed.note;
    return [step, hand, null, 'missed', null, null, nameOf(name), midi, ...silent];
  }
  if (placed.kind === 'unsure') {
    const { step, hand, midi, reason } = placed.note;
    return [step, hand, null, `unsure: ${reason}`, null, null, null, midi, ...silent];
  }
  const { note } = placed;
  const { step, hand, finger, verdict, extraKind, name, midi, wantedName, wantedMidi } = note;
  const heard = extraKind === undefined || extraKind === 'other' ? verdict : `${verdict}: ${extraKind}`;
  return [
    ...[step, hand, finger, heard, nameOf(name), midi],
    ...[wantedName === undefined ? null : nameOf(wantedName), wantedMidi],
    [note.timeSec, 4],
    note.releaseSec === null ? null : [note.releaseSec, 4],
    [note.levelDb, 2],
    [note.confidence, 3],
    ...(verdict === 'correct' ? timed(report, step, hand) : [null, null, null, null]),
  ];
}

/** Interval and deviation of a step, and a hand's crossing into it. */
function timed({ measures }: Report, step: number | null, hand: Hand | null): readonly Cell[] {
  const interval = measures.intervals.find((one) => one.step === step);
  const crossing = measures.crossings.find((one) => one.step === step && one.hand === hand);
  return [
    interval === undefined ? null : [interval.ioiMs, 1],
    interval === undefined ? null : [interval.deviationMs, 1],
    crossing?.kind,
    crossing === undefined ? null : [crossing.delayMs, 1],
  ];
}

function quoted(text: string, separator: string): string {
  return text.includes(separator) || /["\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
