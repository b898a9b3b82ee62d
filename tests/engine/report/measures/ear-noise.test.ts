import { describe, expect, it } from 'vitest';
import type { PlayedNote } from '../../../../src/engine/listen/index.ts';
import { levelNoise, onsetNoise, strikeVariance } from '../../../../src/engine/report/measures/ear-noise.ts';
import { nPVIOf } from '../../../../src/engine/report/measures/npvi.ts';
import { spreadWithoutNoise } from '../../../../src/engine/report/measures/noise.ts';
import type { Interval } from '../../../../src/engine/report/measures/strikes.ts';
import { heardOf, played } from '../../match/simulated.ts';

// What the ear errs by as its tables have it, and what is left of a figure without it, worked out by hand.

/** The errors of the first of these notes, of a listener who errs by 2 ms and 1 dB. */
function errorsOf(...notes: readonly PlayedNote[]): { readonly onsetMs: number; readonly levelDb: number } {
  const heard = { ...heardOf([], { onsetSdMs: 2, levelSdDb: 1 }), notes };
  return { onsetMs: onsetNoise(heard)(notes[0]!), levelDb: levelNoise(heard)(notes[0]!) };
}
const others = (count: number, levelDb = -20): readonly PlayedNote[] =>
  Array.from({ length: count }, (_, at) => played(1.01, 61 + at, { levelDb }));

describe('how far an onset is heard beside its time', () => {
  it.each([
    [79, 0.75, 1.4],
    [78, 1, 1.55],
    [55, 1, 1.55],
    [54, 1.3, 2.2],
    [43, 1.3, 2.2],
    [42, 1.8, 4.4],
    [21, 1.8, 4.4],
  ])('from key %i: %f times the listener’s own alone, %f with another', (midi, alone, inCompany) => {
    expect(errorsOf(played(1, midi)).onsetMs).toBeCloseTo(2 * alone, 9);
    expect(errorsOf(played(1, midi), played(1.01, midi + 1)).onsetMs).toBeCloseTo(2 * inCompany, 9);
  });

  it.each([
    ['60 ms before it', 0.94, 1],
    ['just nearer before it', 0.941, 1.55],
    ['just nearer after it', 1.059, 1.55],
    ['60 ms after it', 1.0601, 1],
  ])('another note %s', (_, timeSec, times) => {
    expect(errorsOf(played(1, 60), played(timeSec, 65)).onsetMs).toBeCloseTo(2 * times, 9);
  });

  it.each([
    ['one louder by 4 dB', others(1, -16), 1.55],
    ['one louder by more', others(1, -15.9), 1.55 * 1.8],
    ['one of two louder by more', [...others(1), ...others(1, -15.9)], 1.55 * 1.8],
    ['four as loud', others(4), 1.55],
    ['five as loud', others(5), 1.55 * 1.4],
    ['five louder ones', others(5, -15), 1.55 * 1.8 * 1.4],
  ])('with %s', (_, company, times) => {
    expect(errorsOf(played(1, 60), ...company).onsetMs).toBeCloseTo(2 * times, 9);
  });

  it('of notes struck as one is that of their mean', () => {
    expect(strikeVariance([{ onsetSdMs: 3 }])).toBeCloseTo(9, 9);
    expect(strikeVariance([{ onsetSdMs: 3 }, { onsetSdMs: 4 }, { onsetSdMs: 0 }])).toBeCloseTo(25 / 9, 9);
  });
});

describe('how far a level is heard beside what it is', () => {
  it.each([
    ['alone', [], 1],
    ['with another', [64], 1.5],
    ['with its octave', [72], 2.8],
    ['with its octave below, and another', [64, 48], 2.8],
  ])('%s', (_, midis, times) => {
    const company = midis.map((midi) => played(1.02, midi));
    expect(errorsOf(played(1, 60), ...company).levelDb).toBeCloseTo(times, 9);
  });

  it('is nothing where the listener claims none', () => {
    expect(levelNoise(heardOf([]))(played(1, 60))).toBe(0);
  });
});

describe('a scatter without the ear’s share', () => {
  // Four values of SD √(20/3) about their mean.
  const AWAY = [-3, 3, 1, -1];
  it('is as heard where the ear adds nothing, and certain', () => {
    const { value, plusMinus } = spreadWithoutNoise(AWAY, { variance: 0, neighbours: 'apart' }, 3);
    expect(value).toBeCloseTo(Math.sqrt(20 / 3), 9);
    expect(plusMinus).toBeCloseTo(0, 9);
  });

  it.each([
    // dᵀΣd − tr Σ² is 2·20 − 16; chance (4·24 + 2·16 + 8·16) / 9.
    ['apart', 1, Math.sqrt(256 / 9 + 0.8 ** 2)],
    // Products of neighbours: −9 + 3 − 1 = −7; dᵀΣd 2·(20 + 7), tr Σ² 4·(4 + 1.5).
    ['share an onset', 0.88, Math.sqrt((4 * 32 + 2 * 22 + 128) / 9 + 0.8 ** 2)],
  ] as const)('has the ± of its definition: values that %s', (neighbours, told, sd) => {
    const { value, plusMinus } = spreadWithoutNoise(AWAY, { variance: 2, neighbours }, 3);
    const variance = 20 / 3 - 2;
    expect(value).toBeCloseTo(Math.sqrt(variance), 9);
    expect(plusMinus).toBeCloseTo(
      (told * (Math.sqrt(variance + sd) - Math.sqrt(Math.max(0, variance - sd)))) / 2,
      9,
    );
  });
});

describe('the nPVI of intervals', () => {
  const intervals = (noiseVariance: number, ...perBeatMs: readonly number[]): readonly Interval[] =>
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

  it('is that of their lengths a beat where the ear adds nothing', () => {
    // 100/3 · (100/450 + 100/450 + 0)
    expect(nPVIOf(intervals(0, 400, 500, 400, 400))).toEqual({
      value: expect.closeTo(400 / 27, 9),
      plusMinus: expect.closeTo(0, 9),
    });
  });

  it('is less by what the ear adds to neighbours, and unsure by that', () => {
    // The noise of two that share an onset: √(3 · 12) = 6 ms of 425, so 24/17 %.
    const [told, noise] = [400 / 27, 24 / 17];
    const value = Math.sqrt(told ** 2 - (2 / Math.PI) * noise ** 2);
    expect(nPVIOf(intervals(12, 400, 500, 400, 400))).toEqual({
      value: expect.closeTo(value, 9),
      plusMinus: expect.closeTo(Math.hypot((1.4 * noise) / Math.sqrt(3), (told - value) / 4), 9),
    });
    expect(nPVIOf(intervals(12, 400, 400, 400, 400))).toMatchObject({ value: 0 });
  });

  it('needs four of them', () => {
    expect(nPVIOf(intervals(0, 400, 500, 400))).toHaveProperty('notMeasured');
  });
});
