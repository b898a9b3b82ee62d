import { isTouched } from './labels.ts';
import type { Spot } from './spots.ts';
import type { PearlRow } from './types.ts';

/** Something that somebody says of a spot or of a stretch, as a numbered mark at the string. */
export interface Pin {
  readonly id: string;
  /** as in the list beside the picture */
  readonly number: number;
  /** index of the spot; null: a stretch */
  readonly spot: number | null;
  /** of a stretch, its ends; of a spot its step twice */
  readonly fromStep: number;
  readonly toStep: number;
}

/** Marks of stretches and of the upper string stand over the row, those of the lower string under it. */
export type PinSide = 'above' | 'below';

/** A pin in the strip over or under a row. Pixels of the strip; y counts down. */
export interface DrawnPin {
  readonly pin: Pin;
  readonly x: number;
  readonly y: number;
  /** from the mark to what it speaks of, which lies beyond the strip */
  readonly stem: {
    readonly x: number;
    readonly toY: number;
    /** where it stops short for the label of an arch, and goes on below; null: nothing is in its way */
    readonly gap: { readonly fromY: number; readonly toY: number } | null;
  } | null;
  /** what a stretch reaches over */
  readonly span: { readonly x1: number; readonly x2: number } | null;
  readonly touch: { readonly x: number; readonly width: number };
}

/** Radius of a mark, and the height of a strip: what a finger hits. */
export const PIN_RADIUS_PX = 12;
export const STRIP_PX = 44;
/** Marks stand at least so far apart, middle to middle. */
const LEAST_APART_PX = 2 * PIN_RADIUS_PX + 5;
/** Free between the end of a stem and the names. */
const STEM_GAP_PX = 3;
/** A finger reaches so far to either side where no other mark is near. */
const REACH_PX = 22;

/**
 * A row and all pins → those that belong over (or under) this row, from left to right, moved apart where they would lie
 * over each other. A stretch is marked in every row that it reaches into.
 */
export function drawPins(row: PearlRow, pins: readonly Pin[], side: PinSide): readonly DrawnPin[] {
  const placed = pins
    .flatMap((pin) => {
      const stretch = side === 'above' ? overStretch(row, pin) : null;
      const place = pin.spot === null ? stretch : atSpot(row, pin.spot, side);
      return place === null ? [] : [{ pin, ...place }];
    })
    .sort((a, b) => a.wantedX - b.wantedX || a.pin.number - b.pin.number);
  const xs = movedApart(
    placed.map(({ wantedX }) => wantedX),
    row.widthPx,
  );
  return placed.map(({ pin, stem, span }, at) => {
    const x = xs[at]!;
    const left = Math.max(x - REACH_PX, at === 0 ? 0 : (x + xs[at - 1]!) / 2);
    const right = Math.min(x + REACH_PX, at === xs.length - 1 ? row.widthPx : (x + xs[at + 1]!) / 2);
    return {
      pin,
      x,
      y: STRIP_PX / 2,
      stem,
      span,
      touch: { x: left, width: right - left },
    };
  });
}

interface Wanted {
  readonly wantedX: number;
  readonly stem: DrawnPin['stem'];
  readonly span: DrawnPin['span'];
}

function atSpot(row: PearlRow, index: number, side: PinSide): Wanted | null {
  const drawn = row.spots.find(({ spot }) => spot.index === index);
  if (drawn === undefined) return null;
  const lower = row.lanes.length > 1 && drawn.spot.hand === row.lanes.at(-1)!.hand;
  if (lower !== (side === 'below')) return null;
  const x = drawn.pearls.reduce((sum, pearl) => sum + pearl.x, 0) / drawn.pearls.length;
  const { y, height } = drawn.touch;
  const toY = lower ? y + height - row.heightPx + STEM_GAP_PX : STRIP_PX + y - STEM_GAP_PX;
  return { wantedX: x, stem: { x, toY, gap: lower ? null : gapAt(row, x) }, span: null };
}

/** A label stands between the strip and the string. */
function gapAt({ arches }: PearlRow, x: number): { readonly fromY: number; readonly toY: number } | null {
  const label = arches.map((arch) => arch.label).find((one) => isTouched(one, x));
  if (label === undefined) return null;
  const baseY = STRIP_PX + label.y;
  return { fromY: baseY - label.sizePx, toY: baseY + STEM_GAP_PX };
}

function overStretch(row: PearlRow, { fromStep, toStep }: Pin): Wanted | null {
  const inside = row.spots.filter(({ spot }) => spot.step >= fromStep && spot.step <= toStep);
  if (inside.length === 0) return null;
  const x1 = Math.min(...inside.map(({ touch }) => touch.x));
  const x2 = Math.max(...inside.map(({ touch }) => touch.x + touch.width));
  return { wantedX: (x1 + x2) / 2, stem: null, span: { x1, x2 } };
}

/** Places in order → the same, no two too near; pushed to the right, and back where the row ends. */
function movedApart(wanted: readonly number[], widthPx: number): readonly number[] {
  const xs: number[] = [];
  for (const x of wanted) xs.push(Math.max(x, PIN_RADIUS_PX + 1, (xs.at(-1) ?? -Infinity) + LEAST_APART_PX));
  let most = widthPx - PIN_RADIUS_PX - 1;
  for (let at = xs.length - 1; at >= 0 && xs[at]! > most; at--) {
    xs[at] = most;
    most -= LEAST_APART_PX;
  }
  return xs;
}

/** The spots that a pin speaks of. */
export function pinnedSpots(spots: readonly Spot[], pin: Pin): readonly Spot[] {
  return spots.filter((spot) =>
    pin.spot === null ? spot.step >= pin.fromStep && spot.step <= pin.toStep : spot.index === pin.spot,
  );
}
