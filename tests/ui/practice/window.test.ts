import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rowAfter, rowWindow, scrollTo } from '../../../src/ui/practice/window.ts';

const ROW_PX = 76;

describe('the rows that are drawn', () => {
  it('are all that are seen and few more, wherever the list stands', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -50, max: 3_000_000 }),
        fc.integer({ min: 0, max: 2000 }),
        fc.integer({ min: 0, max: 40_000 }),
        (scrollTopPx, viewPx, count) => {
          const { from, to } = rowWindow(scrollTopPx, viewPx, ROW_PX, count);
          expect(0 <= from && from <= to && to <= count).toBe(true);
          expect(to - from).toBeLessThanOrEqual(viewPx / ROW_PX + 19);
          for (const y of [scrollTopPx, scrollTopPx + viewPx - 1]) {
            const row = Math.floor(y / ROW_PX);
            if (row >= 0 && row < count && y >= scrollTopPx) expect(from <= row && row < to).toBe(true);
          }
        },
      ),
    );
  });
});

describe('the keys', () => {
  it.each([
    ['ArrowDown', 3, 4],
    ['ArrowUp', 3, 2],
    ['ArrowUp', 0, 0],
    ['ArrowDown', 99, 99],
    ['PageDown', 3, 8],
    ['PageUp', 3, 0],
    ['Home', 50, 0],
    ['End', 50, 99],
  ])('%s leads from row %i to %i', (key, row, to) => {
    expect(rowAfter(key, row, 100, 6)).toBe(to);
  });

  it('leave other keys alone', () => {
    expect(rowAfter('a', 3, 100, 6)).toBeNull();
    expect(rowAfter('Home', 0, 0, 6)).toBeNull();
  });

  it('scroll just as far as it takes to see the row whole', () => {
    expect(scrollTo(0, 500, 400, ROW_PX)).toBe(0);
    expect(scrollTo(10, 0, 400, ROW_PX)).toBe(11 * ROW_PX - 400);
    expect(scrollTo(7, 500, 400, ROW_PX)).toBe(500);
  });
});
