import { STOP_BEATS, type Exercise } from '../../engine/index.ts';
import type { LiveNote } from './state/live-notes.ts';
import { cutSilences } from '../plots/pearls/warp.ts';

/** A pearl of the growing string, px. */
export interface LivePearl {
  readonly id: number;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** '' in a chord, where there is no room, and of a guess, which may yet be corrected */
  readonly name: string;
  /** false: drawn hollow, a first guess */
  readonly final: boolean;
}

export interface LiveRow {
  readonly y: number;
  readonly x1: number;
  readonly x2: number;
}

export interface LivePicture {
  readonly rows: readonly LiveRow[];
  readonly pearls: readonly LivePearl[];
  readonly nameSizePx: number;
}

export interface LiveStringOptions {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly exercise: Exercise;
  /** beats a minute that the scale is made for */
  readonly bpm: number;
  /** spells a key, e.g. 68 → "A♭" */
  readonly nameOf: (midi: number) => string;
}

/** All lengths of the string in radii of a mean pearl, so that it can be drawn at any size. */
const R = {
  step: 4,
  rowAbove: 1.9,
  name: 2.7,
  nameSize: 1.5,
  rowBelow: 3.5,
  chord: 1.9,
  margin: 2,
} as const;
/** Mean radius of a pearl, px: not larger than looks like a pearl, not smaller than is seen from two metres. */
const RADIUS_PX = { most: 28, least: 9 } as const;
/** Struck within this time of each other, seconds: one chord, or both hands (hands may be 40 ms apart). */
const TOGETHER_SEC = 0.05;
/** What one dB adds to a radius, as a share of it, and the bounds. */
const PER_DB = 0.1;
const SIZE = { least: 0.55, most: 1.45 } as const;
/** Players slow down: a row holds so much more time than its steps need. */
const SLACK = 1.08;

/** Notes struck so far → the string in rows, as large as lets the whole exercise stand; what has no room any more leaves at the top. */
export function drawLive(notes: readonly LiveNote[], options: LiveStringOptions): LivePicture {
  const { exercise, widthPx, heightPx, bpm, nameOf } = options;
  const steps = exercise.steps.length;
  const tallest = Math.max(...exercise.steps.map((step) => step.notes.length));
  const { radius, perRow, rowPx } = fit(steps, tallest, widthPx, heightPx);
  const lastBeat = exercise.steps.at(-1)?.beat ?? 0;
  const beatSec = 60 / bpm;
  const rowSec = perRow * (lastBeat / Math.max(1, steps - 1) || 1) * beatSec * SLACK;
  const leftPx = R.margin * radius;
  const innerPx = widthPx - 2 * leftPx;
  const above = (R.rowAbove + ((tallest - 1) / 2) * R.chord) * radius;

  // A stop is drawn shorter, as in the report.
  const warp = cutSilences(
    notes.map(({ timeSec }) => timeSec),
    STOP_BEATS * beatSec,
    1.5 * beatSec,
  );
  const startSec = notes[0] === undefined ? 0 : warp.drawnSec(notes[0].timeSec);
  const drawn = notes.map((note) => warp.drawnSec(note.timeSec) - startSec);
  const rowOf = (sec: number): number => Math.floor(sec / rowSec + 1e-9);
  const lastRow = Math.max(0, ...drawn.map(rowOf));
  const shown = Math.max(1, Math.floor(heightPx / rowPx));
  const firstRow = Math.max(0, lastRow - shown + 1);
  const meanDb = notes.reduce((sum, note) => sum + note.levelDb, 0) / Math.max(1, notes.length);

  const pearls = gather(notes).flatMap((group) => {
    const row = rowOf(drawn[group.first]!);
    if (row < firstRow) return [];
    const y = (row - firstRow) * rowPx + above;
    return group.notes.map((note, place): LivePearl => {
      const sec = drawn[group.first + note.offset]!;
      const grown = 1 + (note.note.levelDb - meanDb) * PER_DB;
      const alone = group.notes.length === 1;
      const { midi, id, final } = note.note;
      return {
        id,
        x: leftPx + ((sec - row * rowSec) / rowSec) * innerPx,
        y: y + ((group.notes.length - 1) / 2 - place) * R.chord * radius,
        radius: radius * Math.min(Math.max(grown, SIZE.least), alone ? SIZE.most : 0.95),
        name: alone && final ? nameOf(midi) : '',
        final,
      };
    });
  });
  const rows = Array.from({ length: lastRow - firstRow + 1 }, (_, index): LiveRow => {
    const row = firstRow + index;
    const ends = Math.max(0, ...pearls.filter(({ y }) => Math.floor(y / rowPx) === index).map(({ x }) => x));
    return {
      y: index * rowPx + above,
      x1: leftPx - 1.6 * radius,
      x2: row < lastRow ? widthPx - 0.4 * radius : Math.max(ends, leftPx) + 1.8 * radius,
    };
  });
  return { rows, pearls, nameSizePx: R.nameSize * radius };
}

/** The largest pearls with which all steps stand in the room that there is. */
function fit(steps: number, tallest: number, widthPx: number, heightPx: number) {
  const at = (radius: number) => {
    const room = Math.max(1, Math.floor((widthPx - 2 * R.margin * radius) / (R.step * radius)));
    const rows = Math.ceil(steps / room);
    const rowPx = (R.rowAbove + R.rowBelow + (tallest - 1) * R.chord) * radius;
    // Rows of one length: the last is not left with a single pearl.
    return { radius, perRow: Math.ceil(steps / rows), rowPx, fits: rows * rowPx <= heightPx };
  };
  for (let radius: number = RADIUS_PX.most; radius > RADIUS_PX.least; radius -= 1) {
    const tried = at(radius);
    if (tried.fits) return tried;
  }
  return at(RADIUS_PX.least);
}

interface Group {
  /** index of its first note in order of time */
  readonly first: number;
  /** ascending by pitch; `offset`: index in order of time, from the first */
  readonly notes: readonly { readonly note: LiveNote; readonly offset: number }[];
}

/** Notes in order of time → those struck together. */
function gather(notes: readonly LiveNote[]): readonly Group[] {
  const starts = notes.flatMap((note, index) => {
    const before = notes[index - 1];
    return before === undefined || note.timeSec - before.timeSec > TOGETHER_SEC ? [index] : [];
  });
  return starts.map((first, group) => ({
    first,
    notes: notes
      .slice(first, starts[group + 1] ?? notes.length)
      .map((note, offset) => ({ note, offset }))
      .sort((a, b) => a.note.midi - b.note.midi),
  }));
}
