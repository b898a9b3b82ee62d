import { shown, signed } from '../../kit/figures.ts';
import type { GraphFigure, GraphPoint } from './types.ts';

/** One point, px. */
export interface DrawnPoint {
  readonly point: GraphPoint;
  readonly index: number;
  readonly x: number;
  readonly y: number;
  readonly baseY: number;
  /** its figure, where it is worth a look and there is room; '' otherwise */
  readonly label: string;
  readonly labelY: number;
  /** what a finger may touch */
  readonly touch: { readonly x: number; readonly width: number };
}

/** One line of a figure, as of a line of text. Pixels. */
export interface GraphRow {
  readonly points: readonly DrawnPoint[];
  readonly names: readonly { readonly x: number; readonly text: string }[];
  /** the course of each hand, where points are joined */
  readonly lines: readonly string[];
  readonly baseY: number;
  readonly band: { readonly y: number; readonly height: number } | null;
  readonly ticks: readonly { readonly y: number; readonly text: string }[];
  readonly x1: number;
  readonly x2: number;
}

export interface GraphPicture {
  readonly rows: readonly GraphRow[];
  readonly widthPx: number;
  readonly heightPx: number;
}

const ROOM = { left: 46, right: 16, top: 20, plot: 120, names: 30 } as const;
/** A step takes at least this much, px: a name and a finger. */
const LEAST_STEP_PX = 29;
const MOST_STEP_PX = 84;
/** How far below its point a figure stands, px. */
const LABEL_PX = 20;
/** Half the width of one digit of a label, px. */
const DIGIT_PX = 4.5;

/** Values → the figure in rows that fit the width, all at one scale. */
export function drawGraph(figure: GraphFigure, widthPx: number): GraphPicture {
  const steps = [...new Set(figure.points.map((point) => point.step))].sort((a, b) => a - b);
  if (steps.length === 0 || widthPx <= 0) return { rows: [], widthPx, heightPx: 0 };
  const innerPx = Math.max(widthPx - ROOM.left - ROOM.right, LEAST_STEP_PX);
  const most = Math.max(1, Math.floor(innerPx / LEAST_STEP_PX));
  const rowCount = Math.ceil(steps.length / most);
  const each = Math.ceil(steps.length / rowCount);
  const stepPx = Math.min(MOST_STEP_PX, innerPx / each);
  const scale = scaleOf(figure);
  const yOf = (value: number): number =>
    ROOM.top +
    ((scale.to - Math.min(Math.max(value, scale.from), scale.to)) / (scale.to - scale.from)) * ROOM.plot;
  const rows = Array.from({ length: rowCount }, (_, row) =>
    drawRow(figure, steps.slice(row * each, (row + 1) * each), stepPx, yOf, scale.ticks),
  );
  return { rows, widthPx, heightPx: ROOM.top + ROOM.plot + ROOM.names };
}

function drawRow(
  figure: GraphFigure,
  steps: readonly number[],
  stepPx: number,
  yOf: (value: number) => number,
  ticks: readonly number[],
): GraphRow {
  const xOf = (step: number): number => ROOM.left + (steps.indexOf(step) + 0.5) * stepPx;
  const both = new Set(figure.points.map((point) => point.hand)).size > 1;
  let labelledTo = -Infinity;
  const points = figure.points.flatMap((point, index): DrawnPoint[] => {
    if (!steps.includes(point.step)) return [];
    const aside = !both ? 0 : point.hand === 'left' ? -stepPx * 0.16 : stepPx * 0.16;
    const x = xOf(point.step) + aside;
    const y = yOf(point.value);
    const figureText = valueText(figure, point.value);
    const halfPx = figureText.length * DIGIT_PX;
    const fits = point.look && x - halfPx > labelledTo + 3;
    if (fits) labelledTo = x + halfPx;
    const below = point.value < figure.base && y + LABEL_PX < ROOM.top + ROOM.plot;
    return [
      {
        point,
        index,
        x,
        y,
        baseY: yOf(figure.base),
        label: fits ? figureText : '',
        labelY: below ? y + LABEL_PX : y - 9,
        touch: both
          ? { x: xOf(point.step) + (point.hand === 'left' ? -stepPx / 2 : 0), width: stepPx / 2 }
          : { x: xOf(point.step) - stepPx / 2, width: stepPx },
      },
    ];
  });
  const hands = [...new Set(figure.points.map((point) => point.hand))];
  const lines = figure.joined
    ? hands.map((hand) =>
        points
          .filter(({ point }) => point.hand === hand)
          .map(({ x, y }, at) => `${at === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`)
          .join(''),
      )
    : [];
  const { band } = figure;
  return {
    points,
    names: steps.map((step) => ({
      x: xOf(step),
      text: figure.points.find((point) => point.step === step)?.name ?? '',
    })),
    lines,
    baseY: yOf(figure.base),
    band: band === null ? null : { y: yOf(band.to), height: yOf(band.from) - yOf(band.to) },
    ticks: ticks.map((value) => ({ y: yOf(value), text: valueText(figure, value) })),
    x1: ROOM.left - 6,
    x2: ROOM.left + steps.length * stepPx + 6,
  };
}

/** A value as it is written in the figure. */
export function valueText(figure: Pick<GraphFigure, 'signed' | 'decimals'>, value: number): string {
  return figure.signed ? signed(value, figure.decimals) : shown(value, figure.decimals);
}

const NICE = [1, 2, 5] as const;

/** A scale that holds every value, the base and the band, with round ticks: at most five of them. */
function scaleOf(figure: GraphFigure): { from: number; to: number; ticks: readonly number[] } {
  const values = figure.points.map((point) => point.value);
  const { band, base } = figure;
  const from = Math.min(base, ...values, ...(band === null ? [] : [band.from]));
  const to = Math.max(base, ...values, ...(band === null ? [] : [band.to]));
  const span = Math.max(to - from, 10 ** -figure.decimals * 2);
  const rough = span / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = (NICE.find((nice) => nice * power >= rough) ?? 10) * power;
  const first = Math.floor(from / step) * step;
  const last = Math.max(Math.ceil(to / step) * step, first + step);
  const count = Math.round((last - first) / step);
  const ticks = Array.from({ length: count + 1 }, (_, at) => first + at * step);
  return { from: first, to: last, ticks };
}
