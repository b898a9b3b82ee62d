/** An even pulse: beat n falls at startMs + n · 60 000 / bpm, by the page's clock. */
export interface Grid {
  readonly startMs: number;
  readonly bpm: number;
}

/** Beats in a group; the first is told from the others. Common practice (four in a bar), no source. */
export const GROUP_BEATS = 4;

/** Time by the page's clock → beats since the pulse began, with their fraction. */
export function beatAt(grid: Grid, nowMs: number): number {
  return ((nowMs - grid.startMs) * grid.bpm) / 60_000;
}

/** The beats from `fromMs` up to but not including `toMs`, none before beat 0. */
export function beatsBetween(
  grid: Grid,
  fromMs: number,
  toMs: number,
): readonly { readonly beat: number; readonly atMs: number }[] {
  // A thousandth of a beat stands for the rounding of the clock: a beat that falls on an edge belongs to one side only.
  const first = Math.max(0, Math.ceil(beatAt(grid, fromMs) - 1e-3));
  const end = Math.ceil(beatAt(grid, toMs) - 1e-3);
  return Array.from({ length: Math.max(0, end - first) }, (_, index) => ({
    beat: first + index,
    atMs: grid.startMs + ((first + index) * 60_000) / grid.bpm,
  }));
}
