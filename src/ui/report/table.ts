import type { Report } from '../../engine/index.ts';
import { shownName } from '../names/index.ts';

/** One line of the table of notes. */
export interface TableRow {
  readonly name: string;
  readonly heard: string;
  readonly finger: string;
  readonly timeSec: number | null;
  readonly levelDb: number | null;
}

/** Report → every note in order, the silent ones after the note before them. */
export function tableRows(report: Report): readonly TableRow[] {
  const struck = report.notes.map((note) => ({
    order: note.timeSec,
    step: note.step,
    row: {
      name: note.name,
      heard:
        note.verdict === 'correct'
          ? 'right'
          : note.verdict === 'wrong'
            ? `wrong, for ${shownName(note.wantedName ?? '')}`
            : `extra${note.extraKind === undefined || note.extraKind === 'other' ? '' : ` (${note.extraKind})`}`,
      finger: note.finger === null ? '' : String(note.finger),
      timeSec: note.timeSec,
      levelDb: note.levelDb,
    },
  }));
  const silentAt = (step: number): number => {
    const before = struck.filter((one) => one.step !== null && one.step < step);
    return (before.at(-1)?.order ?? 0) + 1e-4 * (step + 1);
  };
  const silent = [
    ...report.missed.map((note) => ({ step: note.step, name: note.name, heard: 'missed' })),
    ...report.unsure.map((note) => ({
      step: note.step,
      name: `key ${note.midi}`,
      heard: `not sure: ${note.reason}`,
    })),
  ].map(({ step, name, heard }) => ({
    order: silentAt(step),
    row: { name, heard, finger: '', timeSec: null, levelDb: null },
  }));
  return [...struck, ...silent].sort((a, b) => a.order - b.order).map(({ row }) => row);
}
