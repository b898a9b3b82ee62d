import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseBreaks, type BreakPlace } from '../../../src/ui/plots/pearls/rows.ts';

const evenPlaces = (steps: number, torn: readonly number[] = []): BreakPlace[] =>
  Array.from({ length: steps - 1 }, (_, at) => ({
    beforeSec: at,
    afterSec: at + 1,
    tears: torn.includes(at + 1),
  }));

const rowLengths = (breaks: readonly number[], steps: number): number[] =>
  [...breaks, steps - 1].map((place, row) => place - (breaks[row - 1] ?? -1));

describe('breaking the string into rows', () => {
  it.each([
    [13, 20, [13]],
    [13, 7, [7, 6]],
    [14, 7, [7, 7]],
    [25, 7, [7, 6, 6, 6]],
    [57, 8, [8, 7, 7, 7, 7, 7, 7, 7]],
  ])('%i even notes at most %i a row stand as %j, in some order', (steps, most, expected) => {
    const breaks = chooseBreaks(evenPlaces(steps), 0, steps - 1, { capacitySec: most - 1, stepSec: 1 });
    expect(rowLengths(breaks, steps).sort((a, b) => b - a)).toEqual(expected);
  });

  it('moves a break by a note rather than tear an arch', () => {
    const breaks = chooseBreaks(evenPlaces(14, [7]), 0, 13, { capacitySec: 6, stepSec: 1 });
    expect(rowLengths(breaks, 14)).not.toEqual([7, 7]);
    expect(Math.abs(rowLengths(breaks, 14)[0]! - 7)).toBe(1);
  });

  it('finds what trying every possibility finds', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ gap: fc.double({ min: 0.5, max: 3, noNaN: true }), tears: fc.boolean() }), {
          minLength: 4,
          maxLength: 11,
        }),
        fc.double({ min: 2, max: 6, noNaN: true }),
        (gaps, capacitySec) => {
          let at = 0;
          const places = gaps.map(({ gap, tears }) => ({ beforeSec: at, afterSec: (at += gap), tears }));
          const endSec = at;
          const found = chooseBreaks(places, 0, endSec, { capacitySec, stepSec: 1 });
          const rows = found.length + 1;
          const ideal = (endSec + 1) / rows - 1;
          const cost = (breaks: readonly number[]): number =>
            [...breaks, places.length].reduce((sum, place, row) => {
              const first = row === 0 ? 0 : places[breaks[row - 1]!]!.afterSec;
              const last = places[place]?.beforeSec ?? endSec;
              const over = Math.max(0, last - first - capacitySec - 0.75);
              return sum + (last - first - ideal) ** 2 + 25 * over ** 2 + (places[place]?.tears ? 4 : 0);
            }, 0);
          const all = (from: number, left: number): number[][] =>
            left === 0
              ? [[]]
              : places.flatMap((_, place) =>
                  place < from ? [] : all(place + 1, left - 1).map((rest) => [place, ...rest]),
                );
          const least = Math.min(...all(0, rows - 1).map(cost));
          expect(cost(found)).toBeCloseTo(least, 6);
        },
      ),
      { numRuns: 60 },
    );
  });
});
