/** Geometry of a trend: one pearl an attempt on a thread from left to right, lower is better, and the bound as a line. */

export interface TrendPoint {
  /** null: the figure could not be had */
  readonly value: number | null;
  /** at the criterion in every respect */
  readonly good: boolean;
}

export interface TrendDot {
  /** place among the points given */
  readonly index: number;
  readonly x: number;
  readonly y: number;
  /** full: at the criterion; ring: not; gap: no figure, drawn on the floor */
  readonly shape: 'full' | 'ring' | 'gap';
}

export interface TrendPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly dots: readonly TrendDot[];
  /** thread through the dots that have a figure, an SVG path; '' for fewer than two */
  readonly thread: string;
  readonly boundY: number;
  readonly radiusPx: number;
}

export interface TrendOptions {
  readonly widthPx: number;
  readonly heightPx: number;
  /** up to here is good, in the unit of the values */
  readonly bound: number;
}

const MARGIN_PX = 7;
const LARGEST_RADIUS_PX = 5;
const SMALLEST_RADIUS_PX = 2.5;
/** The scale goes to this many times the bound at least, so that a good row does not look bad. */
const LEAST_BOUNDS = 2;
/** One wild attempt does not flatten the others: values over this many bounds are drawn at the top. */
const MOST_BOUNDS = 4;

/** Values in order of time → where they are drawn. */
export function trendPicture(points: readonly TrendPoint[], options: TrendOptions): TrendPicture {
  const { widthPx, heightPx, bound } = options;
  const values = points.flatMap(({ value }) => (value === null ? [] : [value]));
  const top = Math.min(Math.max(LEAST_BOUNDS * bound, ...values), MOST_BOUNDS * bound);
  const floorY = heightPx - MARGIN_PX;
  const toY = (value: number): number =>
    floorY - (Math.min(Math.max(value, 0), top) / top) * (heightPx - 2 * MARGIN_PX);
  const stepPx = points.length < 2 ? 0 : (widthPx - 2 * MARGIN_PX) / (points.length - 1);
  const dots = points.map(({ value, good }, index): TrendDot => ({
    index,
    x: points.length < 2 ? widthPx / 2 : MARGIN_PX + index * stepPx,
    y: value === null ? floorY : toY(value),
    shape: value === null ? 'gap' : good ? 'full' : 'ring',
  }));
  const threaded = dots.filter(({ shape }) => shape !== 'gap');
  const thread =
    threaded.length < 2
      ? ''
      : threaded
          .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`)
          .join(' ');
  const radiusPx = Math.min(
    LARGEST_RADIUS_PX,
    Math.max(SMALLEST_RADIUS_PX, points.length < 2 ? LARGEST_RADIUS_PX : stepPx / 2.6),
  );
  return { widthPx, heightPx, dots, thread, boundY: toY(bound), radiusPx };
}
