import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trendPicture } from '../../../src/ui/plots/trend/trend.ts';

const SIZE = { widthPx: 300, heightPx: 80, bound: 8 };
const point = (value: number | null, good = false) => ({ value, good });

describe('a trend', () => {
  it('runs from left to right, lower where the figure is lower', () => {
    const { dots, boundY } = trendPicture([point(14), point(10), point(6, true)], SIZE);
    expect(dots.map(({ x }) => x)).toEqual([7, 150, 293]);
    expect(dots[0]!.y).toBeLessThan(dots[1]!.y);
    expect(dots[1]!.y).toBeLessThan(boundY);
    expect(dots[2]!.y).toBeGreaterThan(boundY);
    expect(dots.map(({ shape }) => shape)).toEqual(['ring', 'ring', 'full']);
  });

  it('marks what was not measured on the floor, and leaves it out of the thread', () => {
    const { dots, thread } = trendPicture([point(8), point(null), point(8)], SIZE);
    expect(dots[1]).toMatchObject({ shape: 'gap', y: 73 });
    expect(thread.match(/[ML]/g)).toEqual(['M', 'L']);
  });

  it('draws one attempt in the middle, and none as an empty picture', () => {
    expect(trendPicture([point(8)], SIZE)).toMatchObject({ dots: [{ x: 150 }], thread: '' });
    expect(trendPicture([], SIZE)).toMatchObject({ dots: [], thread: '' });
  });

  it('is not flattened by one wild attempt', () => {
    const { dots } = trendPicture([point(400), point(6), point(10)], SIZE);
    expect(dots[1]!.y - dots[2]!.y).toBeGreaterThan(7);
  });

  it('keeps everything inside the picture', () => {
    const value = fc.option(fc.double({ min: -5, max: 500, noNaN: true }));
    fc.assert(
      fc.property(fc.array(value, { maxLength: 60 }), (values) => {
        const { dots, boundY, radiusPx } = trendPicture(
          values.map((one) => point(one)),
          SIZE,
        );
        expect(boundY > 0 && boundY < SIZE.heightPx).toBe(true);
        for (const { x, y } of dots)
          expect(
            x - radiusPx >= 0 && x + radiusPx <= SIZE.widthPx && y - radiusPx >= 0 && y <= SIZE.heightPx,
          ).toBe(true);
      }),
    );
  });
});
