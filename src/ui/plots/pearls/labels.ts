import type { DrawnText, LabelWays } from './types.ts';

/** How far an extra note's pearl keeps from the middle of another, px. */
const CLEAR_PX = 23;
/** Mean width of a letter as a share of its size; measured on DejaVu Sans, the widest of the fonts in use. */
const LETTER_SHARE = 0.6;
const GAP_PX = 4;

/** An extra note keeps clear of the pearls: beside the nearest, on the side on which it sounded. */
export function beside(x: number, others: readonly number[]): number {
  const nearest = others.reduce<number | null>(
    (best, other) => (best === null || Math.abs(other - x) < Math.abs(best - x) ? other : best),
    null,
  );
  if (nearest === null || Math.abs(nearest - x) >= CLEAR_PX) return x;
  return x >= nearest ? nearest + CLEAR_PX : nearest - CLEAR_PX;
}

/** Labels of one hand in order of time, each in its ways → how each is drawn: the first way that is clear of those before it. */
export class LabelLines {
  /** where the last label of a line ends, px */
  readonly #endsPx = new Map<number, number>();

  put(ways: LabelWays): DrawnText {
    const way = ways.find((one) => this.#isFree(one)) ?? ways.at(-1)!;
    if (way.text !== '') this.#endsPx.set(way.y, startPx(way) + widthPx(way));
    return way;
  }

  #isFree(label: DrawnText): boolean {
    return label.text === '' || startPx(label) >= (this.#endsPx.get(label.y) ?? -Infinity) + GAP_PX;
  }
}

/** How wide a text is drawn, px. */
export const widthPx = (label: Pick<DrawnText, 'text' | 'sizePx'>): number =>
  label.text.length * label.sizePx * LETTER_SHARE;

/** Whether a line that stands upright at `x` would touch a text. */
export function isTouched(label: DrawnText, x: number): boolean {
  const start = startPx(label);
  return label.text !== '' && x > start - GAP_PX && x < start + widthPx(label) + GAP_PX;
}

/** Whether two texts lie over each other, or as good as. */
export function runsInto(one: DrawnText, other: DrawnText): boolean {
  const [left, right] = startPx(one) < startPx(other) ? [one, other] : [other, one];
  return startPx(right) < startPx(left) + widthPx(left) + GAP_PX && Math.abs(one.y - other.y) < one.sizePx;
}

function startPx(label: DrawnText): number {
  const share = { start: 0, middle: 0.5, end: 1 }[label.anchor];
  return label.x - widthPx(label) * share;
}
