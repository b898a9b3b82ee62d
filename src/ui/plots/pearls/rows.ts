/** A place where the string may be broken into rows: between two steps. */
export interface BreakPlace {
  /** last onset before it and first onset after it, drawn seconds */
  readonly beforeSec: number;
  readonly afterSec: number;
  /** a crossing leads over it: its arch would be torn */
  readonly tears: boolean;
}

export interface RowsOptions {
  /** drawn seconds from the first to the last onset that a row should hold at most */
  readonly capacitySec: number;
  /** drawn seconds between two steps, as a yardstick for uneven rows */
  readonly stepSec: number;
}

/** How much worse a torn arch is than a row that is one step longer than the others (squared steps). */
const TEAR_COST = 4;
/** A row that holds more than it should squeezes all rows: each step over, beyond three quarters of a step, counts this much. */
const OVERFLOW_COST = 25;
const SLACK_STEPS = 0.75;

/**
 * Break places in order of time → indices of those to break at, so that rows are as equal as can be and no arch is torn
 * where that can be helped. `spanSec` is the drawn time from the first onset to the last.
 */
export function chooseBreaks(
  places: readonly BreakPlace[],
  startSec: number,
  endSec: number,
  options: RowsOptions,
): readonly number[] {
  // The gap between two rows is drawn in neither of them: n rows hold n − 1 steps less than the whole.
  const wholeSec = endSec - startSec + options.stepSec;
  const wanted = Math.ceil(wholeSec / (options.capacitySec + options.stepSec) - 1e-9);
  const rowCount = Math.min(Math.max(1, wanted), places.length + 1);
  if (rowCount === 1) return [];
  const idealSec = wholeSec / rowCount - options.stepSec;
  const cost = (from: number, to: number): number => {
    const first = from < 0 ? startSec : places[from]!.afterSec;
    const last = to >= places.length ? endSec : places[to]!.beforeSec;
    const tear = to < places.length && places[to]!.tears ? TEAR_COST : 0;
    const over = Math.max(0, (last - first - options.capacitySec) / options.stepSec - SLACK_STEPS);
    return ((last - first - idealSec) / options.stepSec) ** 2 + OVERFLOW_COST * over ** 2 + tear;
  };
  // best[row][place]: cheapest way to end `row` at `place`; place = places.length is the end of the string.
  let best: { cost: number; path: readonly number[] }[] = places.map((_, place) => ({
    cost: cost(-1, place),
    path: [place],
  }));
  for (let row = 1; row < rowCount - 1; row += 1) {
    best = places.map((_, place) =>
      best
        .slice(0, place)
        .map((start, from) => ({ cost: start.cost + cost(from, place), path: [...start.path, place] }))
        .reduce((least, option) => (option.cost < least.cost ? option : least), {
          cost: Infinity,
          path: [] as readonly number[],
        }),
    );
  }
  return best
    .map((start, from) => ({ cost: start.cost + cost(from, places.length), path: start.path }))
    .reduce((least, option) => (option.cost < least.cost ? option : least)).path;
}
