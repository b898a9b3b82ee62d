import type { Spot, LaidOut } from './layout.ts';

/** Fewest columns a step: a name of two letters, a finger, air. */
const FEWEST_COLUMNS = 4;
/** Short attempts are not drawn out beyond this many columns a step. */
const MOST_COLUMNS = 8;

/** What one line shows: steps of both hands from one time to another. */
export interface Line {
  readonly fromSec: number;
  readonly toSec: number;
  readonly spots: readonly Spot[];
}

/** Pearls in time → lines of at most `width` columns with one scale for all. */
export function cutIntoLines(laid: LaidOut, width: number) {
  const columnsASec = scale(laid, width);
  return { columnsASec, lines: wrap(laid, columnsASec, width) };
}

/** Columns a second, so that the closest usual steps have room for their names, and lines come out equally full. */
function scale({ spots }: LaidOut, width: number): number {
  const first = spots[0]!.timeSec;
  const last = spots.at(-1)!.timeSec;
  const steps = new Set(spots.map(({ step }) => step)).size;
  if (steps < 2 || last <= first) return 1;
  const stepSec = (last - first) / (steps - 1);
  const widest = Math.max(...spots.map(({ name, pearls }) => Math.max(name.length, pearls.length) + 2));
  const columns = Math.max(FEWEST_COLUMNS, widest);
  const usable = width - widest;
  const lines = Math.ceil(((steps - 1) * columns) / usable);
  return Math.min((usable * lines) / ((steps - 1) * stepSec), Math.max(columns, MOST_COLUMNS) / stepSec);
}

function wrap({ spots }: LaidOut, columnsASec: number, width: number): Line[] {
  const lines: Spot[][] = [];
  for (const spot of spots) {
    const line = lines.at(-1);
    const start = line?.[0]?.timeSec ?? spot.timeSec;
    const end = (spot.timeSec - start) * columnsASec + Math.max(spot.name.length, spot.pearls.length);
    // Both hands of a step stay on one line.
    const sameStep = line?.at(-1)?.step === spot.step;
    if (line !== undefined && (end < width || sameStep)) line.push(spot);
    else lines.push([spot]);
  }
  return lines.map((line, i) => ({
    spots: line,
    fromSec: line[0]!.timeSec,
    toSec: lines[i + 1]?.[0]?.timeSec ?? Infinity,
  }));
}
