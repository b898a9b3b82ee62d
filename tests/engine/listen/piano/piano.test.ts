import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { learnPiano, listen, mergePianos } from '../../../../src/engine/listen/index.ts';
import type { PianoProfile } from '../../../../src/engine/listen/index.ts';
import { playStrings } from '../strings.ts';

const RATE = 22_050;
const scaleFrom = (lowest: number, options: { cents?: number; stiffness?: number } = {}) =>
  [0, 2, 4, 5, 7, 9, 11, 12].map((step, i) => ({ timeSec: 0.5 + 0.4 * i, midi: lowest + step, ...options }));
const hear = (cents: number, stiffness = 3e-4) =>
  listen({
    channels: [playStrings(scaleFrom(60, { cents, stiffness }), { seconds: 4.5 })],
    sampleRateHz: RATE,
  });
const profile = (cents: number, plusMinus: number, keys: PianoProfile['keys'] = {}): PianoProfile => ({
  version: 1,
  tuningCents: { value: cents, plusMinus, count: 10 },
  keys,
});

describe('what a listening teaches of the piano', () => {
  it('is its tuning, and of each key heard its level, its own tuning and its stiffness within a factor of two', () => {
    const learnt = learnPiano(hear(-31, 4e-4))!;
    expect(Math.abs(learnt.tuningCents.value + 31)).toBeLessThan(3);
    expect(Object.keys(learnt.keys).map(Number)).toEqual([60, 62, 64, 65, 67, 69, 71, 72]);
    for (const key of Object.values(learnt.keys)) {
      expect(Math.abs(key.cents!.value)).toBeLessThan(5);
      expect(Math.abs(key.logStiffness!.value - Math.log10(4e-4))).toBeLessThan(0.3);
      expect(key.levelDb.count).toBe(1);
    }
  });

  it('is nothing where nothing, or a note or two, was heard', () => {
    const { findings, notes, tuning } = hear(0);
    expect(learnPiano({ findings, notes: [], tuning })).toBeNull();
    expect(learnPiano({ findings, notes: notes.slice(0, 2), tuning })).toBeNull();
  });

  it('is plain data: JSON gives it back', () => {
    const learnt = learnPiano(hear(12))!;
    expect(JSON.parse(JSON.stringify(learnt))).toEqual(learnt);
  });
});

describe('what attempts together teach', () => {
  it('is the first alone where nothing was known', () => {
    expect(mergePianos(null, profile(-20, 1))).toEqual(profile(-20, 1));
  });

  it('weighs by certainty: the least-squares mean of two readings (closed form: ±1 and ±2 → weights 4 : 1, ±0.894)', () => {
    const { tuningCents } = mergePianos(profile(-20, 1), profile(-25, 2));
    expect(tuningCents.value).toBeCloseTo(-21, 9);
    expect(tuningCents.plusMinus).toBeCloseTo(2 / Math.sqrt(5), 9);
    expect(tuningCents.count).toBe(20);
  });

  it('keeps the tuning that somebody settled, the newer one, and not of another piano', () => {
    const settled = { ...profile(20, 1), settledCents: -80 };
    expect(mergePianos(settled, profile(21, 1)).settledCents).toBe(-80);
    expect(mergePianos(settled, { ...profile(21, 1), settledCents: 21 }).settledCents).toBe(21);
    expect(mergePianos(settled, profile(-3, 1)).settledCents).toBeUndefined();
  });

  it('is only the newer where the tuning has moved beyond both their ±: the piano was tuned, or is another', () => {
    const newer = profile(1, 1);
    expect(mergePianos(profile(-40, 1), newer)).toEqual(newer);
    expect(mergePianos(profile(-5, 6), newer).tuningCents.count).toBe(20);
  });

  it('keeps a key that only one of them heard, and joins one that both did', () => {
    const level = (value: number) => ({ levelDb: { value, plusMinus: 3, count: 1 } });
    const { keys } = mergePianos(
      profile(0, 1, { 60: level(-20), 62: level(-22), 65: level(-24) }),
      profile(0, 1, { 60: level(-26), 62: level(-30), 64: level(-31), 65: level(-30) }),
    );
    expect(Object.keys(keys).map(Number)).toEqual([60, 62, 64, 65]);
    // Played 6 dB softer as a whole: key 62 alone was softer still.
    expect(keys[62]!.levelDb.value).toBeCloseTo(-23, 9);
    expect(keys[64]!.levelDb.value).toBeCloseTo(-25, 9);
    expect(keys[62]!.levelDb.plusMinus).toBeCloseTo(3 / Math.SQRT2, 9);
    expect(keys[60]!.levelDb.value).toBeCloseTo(-20, 9);
  });

  it('only grows surer, lies between what it joins, and never forgets how to follow a piano that drifts', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 2, maxLength: 12 }),
        (readings) => {
          const merged = readings
            .map((cents) => profile(cents, 2))
            .reduce<PianoProfile | null>(mergePianos, null)!;
          expect(merged.tuningCents.plusMinus).toBeLessThanOrEqual(2);
          expect(merged.tuningCents.value).toBeGreaterThanOrEqual(Math.min(...readings) - 1e-9);
          expect(merged.tuningCents.value).toBeLessThanOrEqual(Math.max(...readings) + 1e-9);
        },
      ),
    );
    let drifting = profile(0, 2);
    for (let i = 1; i <= 60; i++) drifting = mergePianos(drifting, profile(i / 10, 2));
    expect(drifting.tuningCents.value).toBeGreaterThan(3);
  });
});

describe('a listening that knows the piano', () => {
  const sound = playStrings(scaleFrom(60, { cents: -72 }), { seconds: 4.5 });
  const heard = (piano: PianoProfile | null) => listen({ channels: [sound], sampleRateHz: RATE }, { piano });

  it('hears the written keys on a piano 72 cents flat, where blind it is taken for a semitone lower', () => {
    expect(heard(profile(-72, 1)).notes.map(({ midi }) => midi)).toEqual(
      scaleFrom(60).map(({ midi }) => midi),
    );
    expect(heard(null).notes.map(({ midi }) => midi)).toEqual(scaleFrom(59).map(({ midi }) => midi));
  });
});
