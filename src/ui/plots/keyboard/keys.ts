import { playedBy } from '../../../engine/index.ts';
import type { Exercise, ExpectedNote, ExpectedStep, Hand } from '../../../engine/index.ts';
import { strings } from '../../language/index.ts';

/** One key of the diagram, px. */
export interface DrawnKey {
  readonly midi: number;
  readonly black: boolean;
  readonly x: number;
  readonly width: number;
  readonly height: number;
  /** the key of the exercise with its finger; null: not in it */
  readonly note: ExpectedNote | null;
}

/** A stretch of keyboard. Black keys last, so that they are drawn over the white ones. */
export interface KeyboardRow {
  readonly keys: readonly DrawnKey[];
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Keys to be shown together: a hand's passage, or one chord of one hand or both. */
export interface KeyboardFigure {
  /** e.g. "right hand", "IV", "first inversion" */
  readonly label: string;
  /** ascending by pitch */
  readonly notes: readonly ExpectedNote[];
  /** lowest and highest key shown; the same for all chords of an exercise */
  readonly fromMidi: number;
  readonly toMidi: number;
}

const WHITE = [0, 2, 4, 5, 7, 9, 11];
const isWhite = (midi: number): boolean => WHITE.includes(midi % 12);

/** Widest and narrowest white key, px; a real one is 23.5 mm wide and 150 mm long (common practice, no source). */
const WHITE_PX = { most: 34, least: 18 } as const;
const WHITE_HEIGHT = 3.1;
const BLACK_WIDTH = 0.6;
const BLACK_HEIGHT = 0.62;
const FIGURE_GAP_PX = 24;
const MOST_COLUMNS = 3;

/** Exercise → what to show: each hand's keys of a passage, or each different chord. */
export function keyboardFigures(exercise: Exercise): readonly KeyboardFigure[] {
  const { steps } = exercise;
  if (steps.some((step) => step.label !== undefined)) return chordFigures(steps);
  const hands = (['right', 'left'] as const).filter((hand) =>
    steps.some((step) => step.notes.some((note) => note.hand === hand)),
  );
  return hands.map((hand) => {
    const notes = firstOfEachKey(steps.flatMap((step) => step.notes.flatMap((note) => playedBy(hand, note))));
    return { label: hand === 'right' ? 'right hand' : 'left hand', notes, ...rangeOf(notes) };
  });
}

/** Named places → their shapes, each once; the notes of a broken chord are gathered from its steps. */
function chordFigures(steps: readonly ExpectedStep[]): readonly KeyboardFigure[] {
  const shapes = new Map<string, { label: string; notes: readonly ExpectedNote[] }>();
  steps.forEach((step, at) => {
    if (step.label === undefined) return;
    const next = steps.findIndex((other, place) => place > at && other.label !== undefined);
    const parts = steps.slice(at, next < 0 ? undefined : next);
    const notes = firstOfEachKey(parts.flatMap((part) => part.notes));
    const shape = notes.map((note) => note.midi).join(' ');
    if (!shapes.has(shape)) shapes.set(shape, { label: step.label, notes });
  });
  const range = rangeOf([...shapes.values()].flatMap((shape) => shape.notes));
  return [...shapes.values()].map((shape) => ({ ...shape, ...range }));
}

function firstOfEachKey(notes: readonly ExpectedNote[]): readonly ExpectedNote[] {
  const byKey = new Map<number, ExpectedNote>();
  for (const note of notes) if (!byKey.has(note.midi)) byKey.set(note.midi, note);
  return [...byKey.values()].sort((a, b) => a.midi - b.midi);
}

/** From the C or F at or below the lowest key to the E or B at or above the highest: as hands see a keyboard. */
function rangeOf(notes: readonly ExpectedNote[]): Pick<KeyboardFigure, 'fromMidi' | 'toMidi'> {
  const midis = notes.map((note) => note.midi);
  const [lowest, highest] = [Math.min(...midis), Math.max(...midis)];
  return {
    fromMidi: lowest - (lowest % 12 >= 5 ? (lowest % 12) - 5 : lowest % 12),
    toMidi: highest - (highest % 12) + (highest % 12 >= 5 ? 11 : 4),
  };
}

/** How wide each figure may be so that as many as can be read stand side by side. */
export function figureWidthPx(figures: readonly KeyboardFigure[], widthPx: number): number {
  const first = figures[0];
  if (first === undefined || figures.length < 3) return widthPx;
  const least = whiteCount(first.fromMidi, first.toMidi) * WHITE_PX.least;
  const fitting = Math.floor((widthPx + FIGURE_GAP_PX) / (least + FIGURE_GAP_PX));
  const columns = Math.min(Math.max(fitting, 1), MOST_COLUMNS);
  return Math.floor((widthPx - (columns - 1) * FIGURE_GAP_PX) / columns);
}

/** Keys in a width → rows of keyboard, broken before a C or an F where one row would be too narrow to read. */
export function drawKeyboard(figure: KeyboardFigure, widthPx: number): readonly KeyboardRow[] {
  const { notes, fromMidi, toMidi } = figure;
  if (notes.length === 0 || widthPx <= 0) return [];
  const starts = Array.from({ length: toMidi - fromMidi + 1 }, (_, offset) => fromMidi + offset).filter(
    (midi) => midi % 12 === 0 || midi % 12 === 5,
  );
  const rowCount = Math.min(
    starts.length,
    Math.ceil((whiteCount(fromMidi, toMidi) * WHITE_PX.least) / widthPx),
  );
  const each = Math.ceil(starts.length / rowCount);
  const rows = Array.from({ length: Math.ceil(starts.length / each) }, (_, row) => ({
    from: starts[row * each]!,
    to: (starts[(row + 1) * each] ?? toMidi + 1) - 1,
  }));
  const widest = Math.max(...rows.map((row) => whiteCount(row.from, row.to)));
  const keyPx = Math.min(WHITE_PX.most, Math.floor(widthPx / widest));
  return rows.map((row) => drawRow(notes, row.from, row.to, keyPx));
}

function drawRow(notes: readonly ExpectedNote[], from: number, to: number, keyPx: number): KeyboardRow {
  const heightPx = Math.round(keyPx * WHITE_HEIGHT);
  let white = 0;
  const keys = Array.from({ length: to - from + 1 }, (_, offset): DrawnKey => {
    const midi = from + offset;
    const note = notes.find((one) => one.midi === midi) ?? null;
    if (isWhite(midi)) {
      white += 1;
      return { midi, black: false, x: (white - 1) * keyPx, width: keyPx, height: heightPx, note };
    }
    const width = keyPx * BLACK_WIDTH;
    return { midi, black: true, x: white * keyPx - width / 2, width, height: heightPx * BLACK_HEIGHT, note };
  });
  return {
    keys: [...keys.filter((key) => !key.black), ...keys.filter((key) => key.black)],
    widthPx: white * keyPx,
    heightPx,
  };
}

function whiteCount(from: number, to: number): number {
  return Array.from({ length: to - from + 1 }, (_, offset) => from + offset).filter(isWhite).length;
}

/** What a figure shows, in the language of the page; numerals are the same everywhere. */
export function shownLabel(label: string): string {
  const { positions, rightHand, leftHand } = strings().prepare;
  if (label === 'right hand') return rightHand;
  if (label === 'left hand') return leftHand;
  return Object.entries(positions).find(([english]) => english === label)?.[1] ?? label;
}

/** Hands in a figure: both are named only where both are there. */
export function handsOf(figure: KeyboardFigure): readonly Hand[] {
  return [...new Set(figure.notes.map((note) => note.hand))];
}
