import type { Hand } from '../../../engine/index.ts';
import type { Pearl } from './pearls.ts';
import type { Spot } from './spots.ts';

/** ink and soft are text; thread is the string; accent means "look here". */
export type Tone = 'ink' | 'soft' | 'thread' | 'accent';

export interface DrawnText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly sizePx: number;
  readonly tone: Tone;
  readonly serif: boolean;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** A label in the ways that it can be drawn, the best first: what would run into its neighbour takes the next. */
export type LabelWays = readonly [DrawnText, ...DrawnText[]];

export interface DrawnPearl {
  readonly pearl: Pearl;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** where a wrong note's pearl is tied to the string; null for every other */
  readonly tiedAtY: number | null;
}

export interface DrawnSpot {
  readonly spot: Spot;
  readonly pearls: readonly DrawnPearl[];
  readonly labels: readonly DrawnText[];
  /** the words speak of it: a short line under its name; null where not */
  readonly mark: { readonly x1: number; readonly x2: number; readonly y: number } | null;
  /** what a finger may touch */
  readonly touch: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

export interface DrawnArch {
  readonly step: number;
  readonly hand: Hand;
  readonly path: string;
  readonly late: boolean;
  readonly label: DrawnText;
}

export interface DrawnThread {
  readonly step: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly apart: boolean;
  readonly label: DrawnText | null;
}

export interface DrawnLane {
  readonly hand: Hand;
  readonly y: number;
  readonly x1: number;
  readonly x2: number;
  /** even places */
  readonly ticks: readonly {
    readonly step: number;
    readonly x: number;
    readonly y1: number;
    readonly y2: number;
  }[];
  readonly label: DrawnText | null;
}

/** What is pointed out in the picture: more than this, ms. */
export interface PictureLimits {
  readonly handsApartMs: number;
  readonly chordSpreadMs: number;
}

/** One line of the string, as of a line of text. Pixels. */
export interface PearlRow {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly lanes: readonly DrawnLane[];
  readonly arches: readonly DrawnArch[];
  readonly threads: readonly DrawnThread[];
  readonly spots: readonly DrawnSpot[];
  /** silences drawn shorter than they were */
  readonly cuts: readonly { readonly x: number; readonly y: number; readonly label: DrawnText }[];
  /** names and figures of chords */
  readonly words: readonly DrawnText[];
  /** drawn seconds at `leftPx` and the scale, to place a playhead */
  readonly startDrawnSec: number;
  readonly endDrawnSec: number;
  readonly leftPx: number;
}

export interface PearlPicture {
  readonly rows: readonly PearlRow[];
  readonly pxPerSec: number;
  readonly drawnSec: (timeSec: number) => number;
  readonly spots: readonly Spot[];
}
