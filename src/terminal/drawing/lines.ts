import type { Cluster, StringOfBeads } from './beads.ts';

/** Fewest columns a step: a name of two letters, a finger, air. */
const FEWEST_COLUMNS = 4;
/** Short attempts are not drawn out beyond this many columns a step. */
const MOST_COLUMNS = 8;

/** What one line shows: steps of both hands from one time to another. */
export interface Line {
  readonly fromSec: number;
  readonly toSec: number;
  readonly clusters: readonly Cluster[];
}

/** Beads in time → lines of at most `width` columns with one scale for all. */
export function cutIntoLines(laid: StringOfBeads, width: number) {
  const columnsASec = scale(laid, width);
  return { columnsASec, lines: wrap(laid, columnsASec, width) };
}

/** Columns a second, so that the closest usual steps have room for their names, and lines come out equally full. */
function scale({ clusters }: StringOfBeads, width: number): number {
  const first = clusters[0]!.timeSec;
  const last = clusters.at(-1)!.timeSec;
  const steps = new Set(clusters.map(({ step }) => step)).size;
  if (steps < 2 || last <= first) return 1;
  const stepSec = (last - first) / (steps - 1);
  const widest = Math.max(...clusters.map(({ name, beads }) => Math.max(name.length, beads.length) + 2));
  const columns = Math.max(FEWEST_COLUMNS, widest);
  const usable = width - widest;
  const lines = Math.ceil(((steps - 1) * columns) / usable);
  return Math.min((usable * lines) / ((steps - 1) * stepSec), Math.max(columns, MOST_COLUMNS) / stepSec);
}

function wrap({ clusters }: StringOfBeads, columnsASec: number, width: number): Line[] {
  const lines: Cluster[][] = [];
  for (const cluster of clusters) {
    const line = lines.at(-1);
    const start = line?.[0]?.timeSec ?? cluster.timeSec;
    const end = (cluster.timeSec - start) * columnsASec + Math.max(cluster.name.length, cluster.beads.length);
    // Both hands of a step stay on one line.
    const sameStep = line?.at(-1)?.step === cluster.step;
    if (line !== undefined && (end < width || sameStep)) line.push(cluster);
    else lines.push([cluster]);
  }
  return lines.map((line, i) => ({
    clusters: line,
    fromSec: line[0]!.timeSec,
    toSec: lines[i + 1]?.[0]?.timeSec ?? Infinity,
  }));
}
