import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ActiveLevel } from '../../../../src/engine/listen/network/index.ts';
import { RATE_HZ } from './sound.ts';

function levelOf(samples: ArrayLike<number>): ActiveLevel {
  const level = new ActiveLevel(RATE_HZ);
  level.push(Float64Array.from(samples), 0, samples.length);
  return level;
}

const sine = (amplitude: number, seconds: number): number[] =>
  Array.from(
    { length: seconds * RATE_HZ },
    (_, i) => amplitude * Math.sin((2 * Math.PI * 441 * i) / RATE_HZ),
  );

describe('the gain that brings playing to the level of the training', () => {
  // closed form: a sine of amplitude a has RMS a / √2
  it.each([1, 0.1, 0.003])('makes the active RMS of a sine of amplitude %d one tenth', (amplitude) => {
    expect((levelOf(sine(amplitude, 2)).gain(0, 2) * amplitude) / Math.SQRT2).toBeCloseTo(0.1, 4);
  });

  it('does not count pauses', () => {
    const samples = [...new Array<number>(3 * RATE_HZ).fill(0), ...sine(0.2, 3)];
    expect(levelOf(samples).gain(0, 6)).toBeCloseTo((0.1 * Math.SQRT2) / 0.2, 1);
  });

  it('hears only the stretch that it is asked about', () => {
    const samples = [...sine(0.5, 2), ...sine(0.05, 2)];
    expect(levelOf(samples).gain(2.1, 4)).toBeCloseTo((0.1 * Math.SQRT2) / 0.05, 3);
  });

  it('is 1 where there is nothing to level', () => {
    expect(levelOf([]).gain(0, 1)).toBe(1);
    expect(levelOf(new Float64Array(RATE_HZ)).gain(0, 1)).toBe(1);
  });

  it('does not look past the end of the stretch: what comes later changes nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (toSec, loud) => {
          const start = sine(0.2, 2.1);
          expect(levelOf([...start, ...sine(loud, 1)]).gain(0, toSec)).toBe(levelOf(start).gain(0, toSec));
        },
      ),
      { numRuns: 20 },
    );
  });
});
