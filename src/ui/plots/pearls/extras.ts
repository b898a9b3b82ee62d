import { shownName } from '../../names/index.ts';
import type { DrawnSpot, DrawnText } from './types.ts';

/** How far an extra note's pearl keeps from the middle of another, px. */
const CLEAR_PX = 23;
/** Mean width of a letter as a share of its size; measured on DejaVu Sans, the widest of the fonts in use. */
const LETTER_SHARE = 0.6;
const GAP_PX = 4;
const LINE_PX = 15;

/** An extra note keeps clear of the pearls: beside the nearest, on the side on which it sounded. */
export function beside(x: number, others: readonly number[]): number {
  const nearest = others.reduce<number | null>(
    (best, other) => (best === null || Math.abs(other - x) < Math.abs(best - x) ? other : best),
    null,
  );
  if (nearest === null || Math.abs(nearest - x) >= CLEAR_PX) return x;
  return x >= nearest ? nearest + CLEAR_PX : nearest - CLEAR_PX;
}

const widthPx = (label: DrawnText): number => label.text.length * label.sizePx * LETTER_SHARE;

/** Labels of extra notes that would run into each other lose their word, then step up a line. */
export function clearExtraLabels(spots: readonly DrawnSpot[]): readonly DrawnSpot[] {
  const endsPx = new Map<string, number>();
  const free = (line: string, label: DrawnText): boolean =>
    label.x - widthPx(label) / 2 >= (endsPx.get(line) ?? -Infinity) + GAP_PX;
  return spots.map((drawn) => {
    const label = drawn.labels[0];
    const bead = drawn.beads[0]?.bead;
    if (!drawn.spot.extra || label === undefined || bead === undefined || label.anchor !== 'middle')
      return drawn;
    const short = { ...label, text: shownName(bead.name) };
    const raised = { ...short, y: label.y - LINE_PX };
    const line = (one: DrawnText): string => `${drawn.spot.hand} ${one.y}`;
    const fitting = [label, short, raised].find((one) => free(line(one), one)) ?? short;
    endsPx.set(line(fitting), fitting.x + widthPx(fitting) / 2);
    return { ...drawn, labels: [fitting] };
  });
}
