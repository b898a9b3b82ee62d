import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beatAt, beatsBetween } from '../../../src/io/pulse/grid.ts';

const GRID = { startMs: 1000, bpm: 80 };

describe('an even pulse', () => {
  it('at 80 beats a minute has a beat every 750 ms (closed form: 60 000 / 80)', () => {
    expect(beatsBetween(GRID, 0, 3300)).toEqual([
      { beat: 0, atMs: 1000 },
      { beat: 1, atMs: 1750 },
      { beat: 2, atMs: 2500 },
      { beat: 3, atMs: 3250 },
    ]);
    // A beat on an edge belongs to what follows.
    expect(beatsBetween(GRID, 1000, 1750).map(({ beat }) => beat)).toEqual([0]);
    expect(beatAt(GRID, 1375)).toBeCloseTo(0.5, 9);
    expect(beatAt(GRID, 250)).toBeCloseTo(-1, 9);
  });

  it('has each beat once, however time is cut into looks', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 208, noNaN: true }),
        fc.array(fc.double({ min: 1, max: 400, noNaN: true }), { minLength: 1, maxLength: 60 }),
        (bpm, looksMs) => {
          const grid = { startMs: 517.3, bpm };
          let fromMs = 0;
          const found = looksMs.flatMap((lengthMs) => {
            const beats = beatsBetween(grid, fromMs, fromMs + lengthMs);
            fromMs += lengthMs;
            return beats.map(({ beat }) => beat);
          });
          expect(found).toEqual(found.map((_, index) => index));
          expect(found).toEqual(beatsBetween(grid, 0, fromMs).map(({ beat }) => beat));
        },
      ),
    );
  });
});
