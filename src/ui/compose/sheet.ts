import { handsIn, midiOf, PASSAGE_MOST } from '../../engine/index.ts';
import type {
  Exercise,
  ExerciseChoice,
  ExpectedStep,
  Hands,
  OwnPassage,
  WrittenNote,
} from '../../engine/index.ts';

/** A passage under way: there may be nothing in it yet. */
export interface Sheet {
  readonly title: string;
  readonly key: string;
  readonly time: Pick<OwnPassage['bars'][number], 'count' | 'unit'>;
  /** how long the bar before the first whole one is, quarter notes; 0: there is none */
  readonly upbeat: number;
  /** whose staves there are */
  readonly hands: Hands;
  readonly bpm: number | null;
  /** by beat, then hand, then height */
  readonly notes: readonly WrittenNote[];
}

export const EMPTY_SHEET: Sheet = {
  title: '',
  key: 'C major',
  time: { count: 4, unit: 4 },
  upbeat: 0,
  hands: 'together',
  bpm: null,
  notes: [],
};

/** Metres that a passage is mostly written in; any other comes with a file. */
export const TIMES: readonly Sheet['time'][] = [
  { count: 2, unit: 4 },
  { count: 3, unit: 4 },
  { count: 4, unit: 4 },
  { count: 6, unit: 8 },
];

/** "3/4" */
export const timeWords = ({ count, unit }: Sheet['time']): string => `${count}/${unit}`;

/** The other way, of those above. */
export const timeOf = (text: string): Sheet['time'] =>
  TIMES.find((time) => timeWords(time) === text) ?? { count: 4, unit: 4 };

/** Moments nearer than this are one, quarter notes. */
export const NEAR = 2e-3;

export const barBeats = ({ time }: Pick<Sheet, 'time'>): number => (4 * time.count) / time.unit;

/** Where the last bar that it may have ends, quarter notes. */
export const mostBeats = (sheet: Sheet): number => sheet.upbeat + PASSAGE_MOST.bars * barBeats(sheet);

export const inOrder = (notes: readonly WrittenNote[]): readonly WrittenNote[] =>
  [...notes].sort(
    (a, b) =>
      a.beat - b.beat || a.hand.localeCompare(b.hand) || (midiOf(a.name) ?? 0) - (midiOf(b.name) ?? 0),
  );

/** A passage that there is already → the sheet that it lies on. */
export function sheetOf({ key, passage }: ExerciseChoice): Sheet {
  if (passage === undefined) return EMPTY_SHEET;
  const usual = passage.bars.at(-1)!;
  const [first] = passage.bars;
  const whole = (4 * usual.count) / usual.unit;
  return {
    title: passage.title,
    key,
    time: { count: usual.count, unit: usual.unit },
    upbeat: passage.bars.length > 1 && first!.beats < whole - NEAR ? first!.beats : 0,
    hands: handsIn(passage),
    bpm: passage.bpm ?? null,
    notes: inOrder(passage.notes),
  };
}

/** Its bars up to the last note, and so many empty ones after them as there is room for. */
function barsOf(sheet: Sheet, more: number): OwnPassage['bars'] {
  const end = Math.max(0, ...sheet.notes.map(({ beat, beats }) => beat + beats)) - sheet.upbeat;
  const count =
    Math.max(1, Math.ceil((end - NEAR) / barBeats(sheet))) + (sheet.notes.length === 0 ? 0 : more);
  const bar = { ...sheet.time, beats: barBeats(sheet) };
  const whole = Array.from({ length: Math.min(PASSAGE_MOST.bars, count) }, () => bar);
  return sheet.upbeat > 0 ? [{ ...bar, beats: sheet.upbeat }, ...whole] : whole;
}

/** A sheet → the passage on it, to be played; whether anybody can play it, `exerciseOf` says. */
export function choiceOn(sheet: Sheet): ExerciseChoice {
  const { title, key, bpm, notes } = sheet;
  const passage: OwnPassage = {
    title: title.trim().slice(0, PASSAGE_MOST.titleLetters),
    ...(bpm !== null && { bpm }),
    bars: barsOf(sheet, 0),
    notes,
  };
  return {
    key,
    form: 'passage',
    hands: notes.length === 0 ? sheet.hands : handsIn(passage),
    octaves: 1,
    passage,
  };
}

/** A sheet under way as it is laid aside, and the other way: also with staves that are still empty. */
export const laidAside = (sheet: Sheet): ExerciseChoice => ({ ...choiceOn(sheet), hands: sheet.hands });
export const takenUp = (kept: ExerciseChoice): Sheet => ({ ...sheetOf(kept), hands: kept.hands });

/** A sheet → what is drawn of it, with an empty bar to write on in. Its steps are those of all moments. */
export function drawnOf(sheet: Sheet): Exercise {
  const bars = barsOf(sheet, 1);
  const passage: OwnPassage = { title: sheet.title, bars, notes: sheet.notes };
  const first = sheet.notes[0]?.beat ?? 0;
  const steps = momentsOn(sheet).map(({ beat, notes }, step): ExpectedStep => ({
    step,
    beat: beat - first,
    notes: notes.map(({ name, hand, beats, finger }) => ({
      midi: midiOf(name)!,
      name,
      hand,
      beats,
      finger: finger ?? null,
    })),
    crossings: [],
    turn: false,
  }));
  const choice: ExerciseChoice = { key: sheet.key, form: 'passage', hands: 'together', octaves: 1, passage };
  return { choice, title: sheet.title, steps };
}

/** What begins together, in order of time. */
export function momentsOn({ notes }: Pick<Sheet, 'notes'>): readonly {
  readonly beat: number;
  readonly notes: readonly WrittenNote[];
}[] {
  const moments: { beat: number; notes: WrittenNote[] }[] = [];
  for (const note of notes) {
    const last = moments.at(-1);
    if (last !== undefined && note.beat - last.beat < NEAR) last.notes.push(note);
    else moments.push({ beat: note.beat, notes: [note] });
  }
  return moments;
}
