import { describe, expect, it } from 'vitest';
import { buildExercise, practisedExercise } from '../../../../src/engine/exercise/index.ts';
import { innerBalanceDb } from '../../../../src/engine/report/measures/balance.ts';
import { changeGapMs } from '../../../../src/engine/report/measures/changes.ts';
import { chordSpreadMs } from '../../../../src/engine/report/measures/chords.ts';
import { crossingDelayMs } from '../../../../src/engine/report/measures/crossings.ts';
import { firstIntervalDeviationMs } from '../../../../src/engine/report/measures/deviations.ts';
import { driftPercent } from '../../../../src/engine/report/measures/drift.ts';
import { notMeasured } from '../../../../src/engine/report/measures/estimate.ts';
import { growthOf } from '../../../../src/engine/report/measures/growth.ts';
import { loudnessEvennessDb } from '../../../../src/engine/report/measures/loudness.ts';
import type { Loudness } from '../../../../src/engine/report/measures/loudness.ts';
import type { Interval, Strike, StruckKey } from '../../../../src/engine/report/measures/strikes.ts';
import { tempoBpm } from '../../../../src/engine/report/measures/tempo.ts';
import { togetherness } from '../../../../src/engine/report/measures/together.ts';
import { touchMs } from '../../../../src/engine/report/measures/touch.ts';
import { played } from '../../match/simulated.ts';

/** Intervals of a beat each, ms, as an ear hears them whose noise has this variance, ms². */
const intervals = (perBeatMs: readonly number[], noiseVariance = 0): readonly Interval[] =>
  perBeatMs.map((ioiMs, at) => ({
    step: at + 1,
    fromStep: at,
    beats: 1,
    atBeat: at + 0.5,
    ioiMs,
    perBeatMs: ioiMs,
    intoCrossing: false,
    noiseVariance,
  }));

describe('± of the tempo', () => {
  // σ = 10 ms, n = 5, quartiles at 460 and 540 ms: s = 80 / 1.349 = 59.3 ms. Of the middle one exchanged, 0.88 √(2 σ s / n) =
  // 13.55 ms; of itself, 0.65 σ = 6.5 ms; together 13.55 · 6.5 / √(13.55² + 6.5²) = 5.861 ms, of 500 ms.
  it('is that of the median, by the ear’s noise and the middle half of the values', () => {
    const { value, plusMinus } = tempoBpm(intervals([420, 460, 500, 540, 580], 100)) as Measured;
    expect(value).toBeCloseTo(120, 9);
    expect(plusMinus).toBeCloseTo((120 * 5.861) / 500, 3);
  });

  it('does not grow with the slowest and the quickest', () => {
    const { plusMinus } = tempoBpm(intervals([300, 460, 500, 540, 700], 100)) as Measured;
    expect(plusMinus).toBeCloseTo((120 * 5.861) / 500, 3);
  });
});

describe('± of the drift', () => {
  // Left over 10, −20, 20, −20, 20, −20, 10 ms about 500 ms, which lies on no line but a level one: 2200 ms² of 7 − 2 freedoms, beats
  // −3 … 3 with 28 squares: SD of the slope √(2200 / 5 / 28) = 3.964 ms. Neighbours go against each other, by a quarter at most; of the
  // beats they go with each other by 16 / 28: √(1 − 2 · ¼ · 4/7) = √(5/7). From first to last six beats, of 500 ms.
  it('is that of the slope, less what neighbours take from each other', () => {
    const alternating = [10, -20, 20, -20, 20, -20, 10].map((ms) => 500 + ms);
    const { value, plusMinus } = driftPercent(intervals(alternating)) as Measured;
    expect(value).toBeCloseTo(0, 9);
    expect(plusMinus).toBeCloseTo((100 * Math.sqrt(2200 / 5 / 28) * Math.sqrt(5 / 7) * 6) / 500, 9);
  });
});

const SCALE = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 } as const;
const [EXPECTED] = buildExercise(SCALE).steps[0]!.notes;
const key = (more: Partial<StruckKey> & { readonly levelDb?: number } = {}): StruckKey => {
  const { levelDb = -20, timeSec = 1, ...rest } = more;
  const note = { played: played(timeSec, 60, { levelDb }), expected: EXPECTED!, right: true };
  return { step: 0, timeSec, onsetSdMs: 0, levelSdDb: 0, ...note, ...rest };
};
const strike = (step: number, timeSec: number, ...notes: readonly StruckKey[]): Strike => ({
  step,
  timeSec,
  beat: step,
  notes,
  anew: false,
});

describe('± of the deviation at an end', () => {
  // The ear's own 2 ms, 1.1 times; a quarter of the others' scatter, which by the median of 4, 6, 8, 10 is 1.4826 · 7 ms.
  it('holds the ear’s noise and a quarter of how the others stray', () => {
    const deviations = [30, 4, -6, 10, -8].map((deviationMs, at) => ({
      step: at + 1,
      ioiMs: 500,
      deviationMs,
      audible: false,
    }));
    const heard = intervals([500, 500, 500, 500, 500], 4);
    const { value, plusMinus } = firstIntervalDeviationMs(deviations, heard) as Measured;
    expect(value).toBe(30);
    expect(plusMinus).toBeCloseTo(Math.hypot(2.2, (1.4826 * 7) / 4), 9);
  });
});

describe('± of the delay of all crossings', () => {
  it('is that of a mean', () => {
    const crossings = (
      [
        [30, 6],
        [50, 8],
      ] as const
    ).map(([delayMs, plusMinusMs]) => ({
      ...({ step: 3, hand: 'right', kind: 'thumb-under', direction: 'up', ratio: 1, late: false } as const),
      delayMs,
      plusMinusMs,
    }));
    expect(crossingDelayMs(crossings, buildExercise(SCALE))).toEqual({ value: 40, plusMinus: 5 });
  });
});

describe('touch', () => {
  const joins = [0, 10, 20, 30, 40].map((overlapMs, step) => ({ step, overlapMs }));
  const struck = (count: number): readonly Strike[] =>
    Array.from({ length: count }, (_, step) => strike(step, step));

  // Half of the distances from 20 ms are within 10 ms: SD 14.826 ms of one, of the median of five √(π/2)/√5 of it; 30 ms of the dampers.
  it('has the ± of a median and of what is not known of the dampers', () => {
    const { value, plusMinus } = touchMs(joins, struck(6), false) as Measured;
    expect(value).toBe(20);
    expect(plusMinus).toBeCloseTo(Math.hypot((14.826 * Math.sqrt(Math.PI / 2)) / Math.sqrt(5), 30), 9);
  });

  it.each([
    ['half of the ways heard', 5, 11, true],
    ['fewer than half', 5, 12, false],
    ['three', 3, 4, true],
    ['two', 2, 3, false],
  ])('is told or not with %s: %i of %i notes', (_, heard, notes, told) => {
    expect('value' in touchMs(joins.slice(0, heard), struck(notes), false)).toBe(told);
  });
});

describe('± of the spread of chords', () => {
  const spreads = (noiseMs: number, ...spreadsMs: readonly number[]) =>
    spreadsMs.map((spreadMs, step) => ({ step, spreadMs, noiseMs, last: key() }));

  // Of the ear's variance 0.3 in each chord alike, the rest as of a median of four; and 6 % of the spread, by which chords are drawn together.
  it('holds what the ear errs by in all chords and in each', () => {
    const { value, plusMinus } = chordSpreadMs(spreads(5, 20, 40, 30, 50)) as Measured;
    expect(value).toBe(35);
    expect(plusMinus).toBeCloseTo(Math.hypot(5 * Math.sqrt(0.3 + (0.7 * Math.PI) / 8), 0.06 * 35), 9);
  });

  it('is none where the ear claims none', () => {
    expect(chordSpreadMs(spreads(0, 20, 40))).toEqual({ value: 30, plusMinus: 0 });
  });
});

describe('± of the gaps between chords', () => {
  const changes = (heard: number, all: number) =>
    Array.from({ length: all }, (_, step) => ({
      step,
      ratio: 1,
      gapMs: step < heard ? { value: 100 * step } : notMeasured({ notice: 'pedal-held' }),
    }));
  it('is 36 ms of one damping, of the median of so many', () => {
    const { value, plusMinus } = changeGapMs(changes(4, 4), false) as Measured;
    expect(value).toBe(150);
    expect(plusMinus).toBeCloseTo((36 * Math.sqrt(Math.PI / 2)) / 2, 9);
  });

  it.each([
    [2, 4, true],
    [2, 5, false],
    [1, 2, false],
  ])('is told where %i of %i were heard: %s', (heard, all, told) => {
    expect('value' in changeGapMs(changes(heard, all), false)).toBe(told);
  });
});

describe('inner balance', () => {
  const chords = (innerDb: number, levelSdDb: number) =>
    innerBalanceDb(
      [0, 1].map((step) => ({
        strikes: [
          strike(step, step, ...[0, innerDb, 0].map((levelDb) => key({ levelDb: levelDb - 20, levelSdDb }))),
        ],
      })),
      null,
    ) as Measured;

  it('is as heard where the ear claims no error', () => {
    expect(chords(-10, 0)).toEqual({ value: expect.closeTo(-10, 9), plusMinus: 0 });
  });

  // 10 dB softer is a tenth of the power, of which 0.05 is the outer notes': 0.05 is left, 0.08 with 0.02 taken out, and of 0.08 a quarter.
  it('is less by what of the outer notes is in it, unsure by how much that is, and by half a decibel', () => {
    const { value, plusMinus } = chords(-10, 1);
    expect(value).toBeCloseTo(10 * Math.log10(0.05), 9);
    expect(plusMinus).toBeCloseTo(Math.hypot(5 * Math.log10(0.08 / 0.025), 0.5), 9);
  });
});

describe('± of who leads', () => {
  const apart = (notesAHand: number, leftSec: number, count = 4) =>
    togetherness(
      Array.from({ length: count }, (_, step) => strike(step, step + leftSec, ...sure(notesAHand))),
      Array.from({ length: count }, (_, step) => strike(step, step, ...sure(notesAHand))),
    ).leadMs as Measured;
  const sure = (notes: number): readonly StruckKey[] =>
    Array.from({ length: notes }, () => key({ onsetSdMs: 3 }));

  // Both hands 9 ms² each: of four steps a quarter, and 0.3 of the SD alike in all; 6 % of 10 ms, by which they are drawn together.
  it('is that of a mean, and of what the ear errs by in all steps', () => {
    const { value, plusMinus } = apart(1, -0.01);
    expect(value).toBeCloseTo(-10, 9);
    expect(plusMinus).toBeCloseTo(Math.hypot(Math.sqrt(18 / 4), 0.3 * Math.sqrt(18), 0.6), 9);
  });

  // Three keys of 9 ms²: their mean has 3, and 0.4 of it again for each key beside the first.
  it('of chords is more than if each key erred by itself', () => {
    const { plusMinus } = apart(3, 0);
    expect(plusMinus).toBeCloseTo(Math.hypot(Math.sqrt(10.8 / 4), 0.3 * Math.sqrt(10.8)), 9);
  });

  it('needs three steps', () => {
    expect(apart(1, 0, 3)).toHaveProperty('value');
    expect(apart(1, 0, 2)).toHaveProperty('notMeasured');
  });
});

const loudness = (steps: number, levelDb: (step: number) => number, levelSdDb = 0): readonly Loudness[] =>
  Array.from({ length: steps }, (_, step) => ({
    step,
    key: key(),
    levelDb: levelDb(step),
    levelSdDb,
    aboveLineDb: step % 2 === 0 ? 2 : -2,
  }));

describe('± of the evenness of loudness', () => {
  const plusMinusOf = (notes: readonly Loudness[], keysKnown: boolean): number =>
    (loudnessEvennessDb(notes, keysKnown) as Measured).plusMinus;
  const single = loudness(8, () => 0);
  const together = single.map((note, at) => ({ ...note, step: at >> 1 }));

  it('is none of single notes of an ear without error, and 0.3 dB where the keys were learnt from the same fingers', () => {
    expect(plusMinusOf(single, false)).toBeCloseTo(0, 9);
    expect(plusMinusOf(single, true)).toBeCloseTo(0.3, 9);
  });

  it('is half a decibel more of notes struck together, as far as the ear errs at all', () => {
    expect(plusMinusOf(together, false)).toBeCloseTo(0, 9);
    const little = together.map((note) => ({ ...note, levelSdDb: 1e-6 }));
    expect(plusMinusOf(little, false)).toBeCloseTo(0.5, 6);
    expect(plusMinusOf(little, true)).toBeCloseTo(Math.hypot(0.5, 0.3), 6);
  });

  it('needs five notes', () => {
    expect(loudnessEvennessDb(single.slice(0, 5), false)).toHaveProperty('value');
    expect(loudnessEvennessDb(single.slice(0, 4), false)).toHaveProperty('notMeasured');
  });
});

describe('growth over what was practised', () => {
  const twice = practisedExercise(SCALE, {
    intention: { stretch: { fromStep: 0, toStep: 4 }, times: 2, rhythm: 'even' },
    repeats: 2,
  });
  const grown = (levelDb: (place: number) => number) =>
    growthOf(
      loudness(10, (step) => levelDb((step % 5) / 4)),
      twice,
      true,
    )!;

  it('is from the first note of a copy to its last, with the middle on the line, above or below it', () => {
    const about = (value: number) => ({ value: expect.closeTo(value, 9) as number });
    expect(grown((place) => 4 * place)).toMatchObject({ growsDb: about(4), bowDb: about(0) });
    expect(grown((place) => 4 * place + 8 * place * (1 - place))).toMatchObject({
      growsDb: about(4),
      bowDb: about(2),
    });
    expect(grown((place) => -3 * place - 4 * place * (1 - place))).toMatchObject({
      growsDb: about(-3),
      bowDb: about(-1),
    });
  });
});

interface Measured {
  readonly value: number;
  readonly plusMinus: number;
}
