import { describe, expect, it } from 'vitest';
import { drawPins, pinnedSpots } from '../../../src/ui/plots/pearls/pins.ts';
import type { Pin } from '../../../src/ui/plots/pearls/pins.ts';
import type { Spot } from '../../../src/ui/plots/pearls/spots.ts';
import type { DrawnSpot, PearlRow } from '../../../src/ui/plots/pearls/types.ts';

/** One row as small as can be: spots 100 px apart on one string or two, each touched 40 px wide and 60 px high from y = 30. */
function row(hands: readonly ('right' | 'left')[], widthPx = 500): PearlRow {
  const spots = [0, 1, 2, 3].flatMap((step) =>
    hands.map((hand, lane): DrawnSpot => {
      const x = 100 * (step + 1);
      const spot: Spot = {
        index: hands.length * step + lane,
        hand,
        step,
        extra: false,
        timeSec: step,
        pearls: [],
      };
      const pearls = [x - 10, x + 10].map((at) => ({ x: at })) as unknown as DrawnSpot['pearls'];
      return { spot, pearls, labels: [], mark: null, touch: { x: x - 20, y: 30, width: 40, height: 60 } };
    }),
  );
  const lanes = hands.map((hand) => ({ hand })) as unknown as PearlRow['lanes'];
  return { spots, lanes, arches: [], widthPx, heightPx: 200 } as unknown as PearlRow;
}
const at = (spot: number, number = 1): Pin => ({
  id: `p${number}`,
  number,
  spot,
  fromStep: spot,
  toStep: spot,
});
const over = (fromStep: number, toStep: number, number = 1): Pin => ({
  id: `s${number}`,
  number,
  spot: null,
  fromStep,
  toStep,
});

describe('a mark over the string, to the pixel', () => {
  it('stands over the middle of its pearls; its stem ends 3 px over what a finger touches', () => {
    expect(drawPins(row(['right']), [at(1)], 'above')).toEqual([
      // The strip is 44 px high, the touch begins 30 px below it: 44 + 30 − 3.
      {
        pin: at(1),
        x: 200,
        y: 22,
        stem: { x: 200, toY: 71, gap: null },
        span: null,
        touch: { x: 178, width: 44 },
      },
    ]);
    expect(drawPins(row(['right']), [at(1)], 'below')).toEqual([]);
    expect(drawPins(row(['right']), [at(9)], 'above')).toEqual([]);
  });

  it.each([
    // 7 letters of 15 px, 63 px wide in all: the last ends at 201.5.
    ['leaves out the label of an arch that it would touch', 170, { fromY: 44 + 12 - 15, toY: 44 + 12 + 3 }],
    ['passes by a label 4 px away', 164, null],
  ])('its stem %s', (_, x, gap) => {
    const label = { text: '+123 ms', x, y: 12, sizePx: 15, anchor: 'middle' };
    const arched = { ...row(['right']), arches: [{ label }] } as unknown as PearlRow;
    expect(drawPins(arched, [at(1)], 'above')).toMatchObject([{ stem: { x: 200, gap } }]);
  });

  it('stands under the string where that is the lower of two', () => {
    const two = row(['right', 'left']);
    // Up from the strip under a row of 200 px: the touch ends at 90, 3 px free.
    expect(drawPins(two, [at(3)], 'below')).toMatchObject([{ x: 200, stem: { x: 200, toY: 90 - 200 + 3 } }]);
    expect(drawPins(two, [at(3)], 'above')).toEqual([]);
    expect(drawPins(two, [at(2)], 'above')).toMatchObject([{ x: 200, stem: { x: 200, toY: 71 } }]);
    expect(drawPins(two, [at(2)], 'below')).toEqual([]);
  });

  it('of a stretch reaches from the first to the last that is touched, over the upper string alone', () => {
    const two = row(['right', 'left']);
    expect(drawPins(two, [over(1, 2)], 'above')).toMatchObject([
      { x: 250, stem: null, span: { x1: 180, x2: 320 } },
    ]);
    expect(drawPins(two, [over(1, 2)], 'below')).toEqual([]);
    expect(drawPins(two, [over(4, 7)], 'above')).toEqual([]);
    expect(drawPins(two, [over(3, 7)], 'above')).toMatchObject([{ span: { x1: 380, x2: 420 } }]);
  });
});

describe('marks that are near each other', () => {
  it('are 29 px apart, in order of place and then of number, and share the room between them', () => {
    const pins = drawPins(row(['right']), [at(2, 1), at(1, 3), at(1, 2)], 'above');
    expect(pins.map(({ pin, x }) => [pin.number, x])).toEqual([
      [2, 200],
      [3, 229],
      [1, 300],
    ]);
    expect(pins.map(({ touch }) => touch)).toEqual([
      { x: 178, width: 214.5 - 178 },
      { x: 214.5, width: 251 - 214.5 },
      { x: 278, width: 44 },
    ]);
  });

  it('are pushed back from the end of the row, and stay 13 px off its edges', () => {
    const right = drawPins(row(['right'], 420), [at(3, 1), at(3, 2)], 'above');
    expect(right.map(({ x }) => x)).toEqual([378, 407]);
    expect(right.at(-1)!.touch).toEqual({ x: 392.5, width: 420 - 392.5 });
    const narrow = drawPins(row(['right'], 405), [at(3, 1), at(3, 2), at(3, 3)], 'above');
    expect(narrow.map(({ x }) => x)).toEqual([334, 363, 392]);
    const left = drawPins({ ...row(['right']), spots: moved(-395) }, [at(3)], 'above');
    expect(left).toMatchObject([{ x: 13, touch: { x: 0, width: 35 } }]);
  });
});

const moved = (byPx: number): readonly DrawnSpot[] =>
  row(['right']).spots.map((spot) => ({
    ...spot,
    pearls: spot.pearls.map((pearl) => ({ ...pearl, x: pearl.x + byPx })),
  }));

describe('what a mark speaks of', () => {
  it('is its spot, or every spot of its stretch with both ends', () => {
    const spots = row(['right', 'left']).spots.map(({ spot }) => spot);
    const found = (pin: Pin): readonly number[] => pinnedSpots(spots, pin).map(({ index }) => index);
    expect(found(at(3))).toEqual([3]);
    expect(found(over(1, 2))).toEqual([2, 3, 4, 5]);
    expect(found(over(3, 3))).toEqual([6, 7]);
  });
});
