import { describe, expect, it } from 'vitest';
import { RATE_HZ, SampleHistory } from '../../../../src/engine/listen/audio/index.ts';
import { StringProbe } from '../../../../src/engine/listen/partials/probe.ts';
import { ReleaseFinder } from '../../../../src/engine/listen/partials/release.ts';
import { partialRatio, typicalStiffness } from '../../../../src/engine/listen/partials/stiffness.ts';
import { playStrings } from '../strings.ts';

const historyOf = (samples: Float32Array): SampleHistory => {
  const history = new SampleHistory(samples.length);
  history.append(Float64Array.from(samples), 0, samples.length);
  return history;
};

describe('inharmonicity by key', () => {
  // Rigaud, David & Daudet 2013; coefficients from memory
  it.each([
    ['A0', 21, 5e-4],
    ['C2', 36, 1.7e-4],
    ['C3', 48, 1.5e-4],
    ['C4', 60, 3.3e-4],
    ['C5', 72, 9e-4],
    ['C6', 84, 2.8e-3],
    ['C7', 96, 9e-3],
  ])('of %s is that of the table within a tenth', (_, midi, wanted) => {
    expect(Math.abs(typicalStiffness(midi) / wanted - 1)).toBeLessThan(0.1);
  });

  it('puts the partials of a string without stiffness at whole multiples', () => {
    for (const n of [1, 2, 7]) expect(partialRatio(n, 0)).toBe(n);
    expect(partialRatio(10, 4e-4)).toBeGreaterThan(10);
  });
});

describe('a look at a struck string', () => {
  it.each([
    [48, -20],
    [60, 0],
    [69, 17],
    [84, -9],
  ])('reads the pitch of key %i that lies %i cents off to 3 cents', (midi, cents) => {
    const stiffness = typicalStiffness(midi);
    const sound = playStrings([{ timeSec: 0.5, midi, cents, stiffness }], { seconds: 1.2 });
    const { pitch } = new StringProbe(historyOf(sound)).look(0.5 * RATE_HZ, Infinity, midi);
    expect(pitch).not.toBeNull();
    expect(Math.abs(100 * (pitch! - midi) - cents)).toBeLessThan(3);
  });

  it('reads twice the amplitude as 6.02 dB more', () => {
    const level = (amplitude: number): number =>
      new StringProbe(historyOf(playStrings([{ timeSec: 0.5, midi: 60, amplitude }], { seconds: 1 }))).look(
        0.5 * RATE_HZ,
        Infinity,
        60,
      ).levelDb;
    expect(level(0.2) - level(0.1)).toBeCloseTo(6.02, 1);
  });

  it('says nothing of a pitch where there is silence', () => {
    const { pitch } = new StringProbe(historyOf(new Float32Array(RATE_HZ))).look(0.5 * RATE_HZ, Infinity, 60);
    expect(pitch).toBeNull();
  });
});

describe('a release', () => {
  const string = (onsetSec: number, midi: number) => ({
    onsetSample: onsetSec * RATE_HZ,
    pitch: midi,
    stiffness: 3e-4,
  });
  /** A tone whose damper falls at `dampedSec`: from there on it dies with a time constant of 40 ms. */
  const damped = (midi: number, dampedSec: number): SampleHistory =>
    historyOf(
      playStrings([{ timeSec: 0.3, midi }], { seconds: 2 }).map((x, i) =>
        i < dampedSec * RATE_HZ ? x : x * Math.exp(-(i / RATE_HZ - dampedSec) / 0.04),
      ),
    );

  it.each([0.55, 0.7, 0.95])('at %f s is found within 40 ms', (dampedSec) => {
    const found = new ReleaseFinder(damped(60, dampedSec)).find(string(0.3, 60), [], 2 * RATE_HZ);
    expect(found).not.toBeNull();
    expect(Math.abs(found! / RATE_HZ - dampedSec)).toBeLessThan(0.04);
  });

  it('is not claimed where all partials are hidden by the same key struck again', () => {
    const again = string(0.6, 60);
    expect(new ReleaseFinder(damped(60, 0.7)).find(string(0.3, 60), [again], 2 * RATE_HZ)).toBeNull();
  });

  it('is not claimed of strings without dampers', () => {
    expect(new ReleaseFinder(damped(100, 0.7)).find(string(0.3, 100), [], 2 * RATE_HZ)).toBeNull();
  });
});
