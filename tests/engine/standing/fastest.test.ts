import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_CRITERIA, fastestEven, type ExerciseChoice } from '../../../src/engine/index.ts';
import { attempts, DAY_MS, NOW_MS } from './history.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const UNEVEN = { evennessPercent: 20 };
const fastest = (...made: Parameters<typeof attempts>[1]) =>
  fastestEven(attempts(SCALE, made), DEFAULT_CRITERIA);

describe('the fastest tempo still even', () => {
  it('is not there where nothing was right and even', () => {
    expect(fastest()).toBeNull();
    expect(fastest({ tempoBpm: 80, ...UNEVEN }, { tempoBpm: 70, wrong: 1 }, { tempoBpm: null })).toBeNull();
  });

  it('is that of the fastest attempt at least, where nothing faster was tried', () => {
    expect(fastest({ tempoBpm: 80 }, { tempoBpm: 96 }, { tempoBpm: 70 })).toMatchObject({
      bpm: 96,
      plusMinus: null,
    });
  });

  it('lies between the fastest even attempt and the slowest faster one that was not', () => {
    expect(
      fastest({ tempoBpm: 96 }, { tempoBpm: 104, ...UNEVEN }, { tempoBpm: 112, ...UNEVEN }),
    ).toMatchObject({ bpm: 100, plusMinus: 4 });
  });

  it('is not held back by what failed long before it went well', () => {
    const history = [
      ...attempts(SCALE, [{ tempoBpm: 98, ...UNEVEN }], 40),
      ...attempts(SCALE, [{ tempoBpm: 96 }], 1),
    ];
    expect(fastestEven(history, DEFAULT_CRITERIA)).toMatchObject({ bpm: 96, plusMinus: null });
  });

  it.each([
    [6.9, { bpm: 97, plusMinus: 1 }],
    [7.1, { bpm: 96, plusMinus: null }],
  ])('is held back by what failed up to a week before it went well: %f days', (days, found) => {
    const made = [
      ...attempts(SCALE, [{ tempoBpm: 98, ...UNEVEN }], days),
      ...attempts(SCALE, [{ tempoBpm: 96 }]),
    ];
    expect(fastestEven(made, DEFAULT_CRITERIA)).toMatchObject(found);
  });

  it('is reached once: the same tempo again is no faster one', () => {
    expect(fastest({ tempoBpm: 80 }, { tempoBpm: 80 })!.history).toEqual([
      { whenMs: NOW_MS - DAY_MS, bpm: 80 },
    ]);
  });

  it('keeps what was the fastest when', () => {
    expect(fastest({ tempoBpm: 60 }, { tempoBpm: 72 }, { tempoBpm: 66 }, { tempoBpm: 80 })!.history).toEqual([
      { whenMs: NOW_MS - 3 * DAY_MS, bpm: 60 },
      { whenMs: NOW_MS - 2 * DAY_MS, bpm: 72 },
      { whenMs: NOW_MS, bpm: 80 },
    ]);
  });

  it('finds the border of somebody who is even up to a tempo and not beyond, within its ±', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 160, noNaN: true }),
        fc.array(fc.double({ min: 40, max: 180, noNaN: true }), { minLength: 2, maxLength: 40 }),
        (border, tempi) => {
          const made = tempi.map((tempoBpm) => ({ tempoBpm, evennessPercent: tempoBpm <= border ? 1 : 40 }));
          const found = fastest(...made);
          if (found === null) return;
          if (found.plusMinus === null) expect(found.bpm).toBeLessThanOrEqual(border);
          else expect(Math.abs(found.bpm - border)).toBeLessThanOrEqual(found.plusMinus + 1e-9);
        },
      ),
    );
  });
});
