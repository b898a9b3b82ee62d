/** Which rows of a long list are drawn: those that are seen, and a few more on either side. */
export interface RowWindow {
  readonly from: number;
  /** one past the last */
  readonly to: number;
}

/** Rows drawn beyond either edge, so that a quick scroll does not show paper. */
const BEYOND = 8;

/** Scroll place and sizes in px → the rows to draw; always within 0 and `count`. */
export function rowWindow(scrollTopPx: number, viewPx: number, rowPx: number, count: number): RowWindow {
  const first = Math.floor(Math.max(0, scrollTopPx) / rowPx);
  const last = Math.ceil((Math.max(0, scrollTopPx) + Math.max(0, viewPx)) / rowPx);
  const from = Math.min(Math.max(0, first - BEYOND), count);
  return { from, to: Math.min(Math.max(from, last + BEYOND), count) };
}

/** Where to scroll so that a row is seen whole; the place where it stands already if it is. */
export function scrollTo(row: number, scrollTopPx: number, viewPx: number, rowPx: number): number {
  const top = row * rowPx;
  if (top < scrollTopPx) return top;
  return top + rowPx > scrollTopPx + viewPx ? Math.max(0, top + rowPx - viewPx) : scrollTopPx;
}

/** A key of the keyboard → the row it leads to from this one; null: it leads nowhere. */
export function rowAfter(key: string, row: number, count: number, rowsInView: number): number | null {
  const moves: Readonly<Record<string, number>> = {
    ArrowDown: row + 1,
    ArrowUp: row - 1,
    PageDown: row + Math.max(1, rowsInView - 1),
    PageUp: row - Math.max(1, rowsInView - 1),
    Home: 0,
    End: count - 1,
  };
  const to = moves[key];
  return to === undefined || count === 0 ? null : Math.min(Math.max(0, to), count - 1);
}
