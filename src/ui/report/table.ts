import type { Report } from '../../engine/index.ts';
import { notice, strings } from '../language/index.ts';
import { shownName } from '../names/index.ts';
import { sounded } from '../plots/pearls/pearls.ts';
import type { Spot } from '../plots/pearls/spots.ts';

/** One line of the table of notes. */
export interface TableRow {
  readonly name: string;
  readonly heard: string;
  readonly finger: string;
  readonly timeSec: number | null;
  readonly levelDb: number | null;
  /** its place on the string */
  readonly spot: number | null;
}

/** Report and its spots → every note in order, the silent ones after the note before them. */
export function tableRows(report: Report, spots: readonly Spot[] = []): readonly TableRow[] {
  const t = strings().report;
  const spotOf = (midi: number, matches: (pearl: Spot['pearls'][number]) => boolean): number | null =>
    spots.find((spot) => spot.pearls.some((pearl) => pearl.midi === midi && matches(pearl)))?.index ?? null;
  const struck = report.notes.map((note) => ({
    order: note.timeSec,
    step: note.step,
    row: {
      name: note.name,
      heard:
        note.verdict === 'correct'
          ? t.asRight
          : note.verdict === 'wrong'
            ? t.asWrong(shownName(note.wantedName ?? ''))
            : t.EXTRA[note.extraKind ?? 'other'],
      finger: note.finger === null ? '' : String(note.finger),
      timeSec: note.timeSec,
      levelDb: note.levelDb,
      spot: spotOf(note.midi, (pearl) => pearl.timeSec === note.timeSec),
    },
  }));
  const silentAt = (step: number): number => {
    const before = struck.filter((one) => one.step !== null && one.step < step);
    return (before.at(-1)?.order ?? 0) + 1e-4 * (step + 1);
  };
  const silent = [
    ...report.missed.map((note) => ({ ...note, heard: t.asMissed })),
    ...report.unsure.map((note) => ({
      ...note,
      name: t.keyNumber(note.midi),
      heard: t.asUnsure(notice(note.notice ?? note.reason)),
    })),
  ].map(({ step, name, heard, midi, hand }) => ({
    order: silentAt(step),
    row: {
      name,
      heard,
      finger: '',
      timeSec: null,
      levelDb: null,
      spot: spotOf(midi, (pearl) => pearl.step === step && pearl.hand === hand && !sounded(pearl)),
    },
  }));
  return [...struck, ...silent].sort((a, b) => a.order - b.order).map(({ row }) => row);
}
