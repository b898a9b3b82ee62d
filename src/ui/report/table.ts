import type { Exercise, Hand, Report } from '../../engine/index.ts';
import { inOrder, type PlacedNote } from '../../io/exchange/index.ts';
import { notice, strings } from '../language/index.ts';
import { shownNameWithOctave, shownWrongName } from '../names/index.ts';
import { sounded } from '../plots/pearls/pearls.ts';
import type { Spot } from '../plots/pearls/spots.ts';

/** One line of the table of notes. */
export interface TableRow {
  /** as it is written; what is written nowhere as it sounded */
  readonly name: string;
  readonly hand: Hand | null;
  readonly heard: string;
  readonly finger: string;
  readonly timeSec: number | null;
  readonly levelDb: number | null;
  /** its place on the string */
  readonly spot: number | null;
}

/** Report and its spots → every note in its place. */
export function tableRows(
  report: Report,
  exercise: Exercise,
  spots: readonly Spot[] = [],
): readonly TableRow[] {
  const spotOf = (midi: number, matches: (pearl: Spot['pearls'][number]) => boolean): number | null =>
    spots.find((spot) => spot.pearls.some((pearl) => pearl.midi === midi && matches(pearl)))?.index ?? null;
  return inOrder(report).map((placed): TableRow => {
    const { note } = placed;
    const words = { ...wordsOf(placed, exercise), hand: note.hand };
    if (placed.kind === 'struck') {
      const { finger, timeSec, levelDb, midi } = placed.note;
      const spot = spotOf(midi, (pearl) => pearl.timeSec === timeSec);
      return { ...words, finger: finger === null ? '' : String(finger), timeSec, levelDb, spot };
    }
    const spot = spotOf(
      note.midi,
      (pearl) => pearl.step === note.step && pearl.hand === note.hand && !sounded(pearl),
    );
    return { ...words, finger: '', timeSec: null, levelDb: null, spot };
  });
}

function wordsOf(placed: PlacedNote, exercise: Exercise): Pick<TableRow, 'name' | 'heard'> {
  const t = strings().report;
  if (placed.kind === 'missed') return { name: shownNameWithOctave(placed.note.name), heard: t.asMissed };
  if (placed.kind === 'unsure') {
    const { step, midi, reason, notice: why = reason } = placed.note;
    const written = exercise.steps[step]?.notes.find((one) => one.midi === midi)?.name;
    const name = written === undefined ? t.keyNumber(midi) : shownNameWithOctave(written);
    return { name, heard: t.asUnsure(notice(why)) };
  }
  const { name, verdict, wantedName = name, extraKind = 'other' } = placed.note;
  if (verdict === 'correct') return { name: shownNameWithOctave(name), heard: t.asRight };
  if (verdict === 'extra') return { name: shownNameWithOctave(name), heard: t.EXTRA[extraKind] };
  return { name: shownNameWithOctave(wantedName), heard: t.asWrong(struckFor(name, wantedName)) };
}

/** What was struck in a note's place, with its octave where that is not the same. */
function struckFor(name: string, wantedName: string): string {
  const octave = /-?\d+$/;
  const same = octave.exec(name)?.[0] === octave.exec(wantedName)?.[0];
  return same ? shownWrongName(name, wantedName) : shownNameWithOctave(name);
}
