import type { Report } from '../../engine/index.ts';

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
] as const;

type Cell = string | number | null | undefined;

/**
 * Report → its notes as comma-separated values (RFC 4180, UTF-8, a decimal point): one line a note in order of time, then what
 * was missed and what is unsure. Steps count from 0, as in the report's JSON; times are exact to 0.1 ms.
 */
export function encodeCsv(report: Report): string {
  const struck = report.notes.map((note): readonly Cell[] => [
    note.step,
    note.hand,
    note.finger,
    note.extraKind === undefined || note.extraKind === 'other'
      ? note.verdict
      : `${note.verdict}: ${note.extraKind}`,
    note.name,
    note.midi,
    note.wantedName,
    note.wantedMidi,
    note.timeSec.toFixed(4),
    note.releaseSec?.toFixed(4),
    note.levelDb.toFixed(2),
    note.confidence.toFixed(3),
  ]);
  const missed = report.missed.map(({ step, hand, name, midi }): readonly Cell[] => [
    ...[step, hand, null, 'missed', null, null, name, midi],
    ...[null, null, null, null],
  ]);
  const unsure = report.unsure.map(({ step, hand, midi, reason }): readonly Cell[] => [
    ...[step, hand, null, `unsure: ${reason}`, null, null, null, midi],
    ...[null, null, null, null],
  ]);
  return [COLUMNS, ...struck, ...missed, ...unsure]
    .map((line) => `${line.map((cell) => quoted(cell)).join(',')}\r\n`)
    .join('');
}

function quoted(cell: Cell): string {
  const text = cell === null || cell === undefined ? '' : String(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
