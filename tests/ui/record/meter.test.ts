import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levelAdvice, METER_FLOOR_DB, meterShare, TOO_QUIET_DB } from '../../../src/ui/record/meter.ts';

describe('the meter', () => {
  // 0 dB is full scale (AES17): the end of the meter.
  it.each([
    [0, 1],
    [METER_FLOOR_DB / 2, 0.5],
    [METER_FLOOR_DB, 0],
    [-200, 0],
    [3, 1],
  ])('stands at %s dB at %s of its length', (db, share) => {
    expect(meterShare(db)).toBeCloseTo(share, 12);
  });

  it('never falls while the level rises', () => {
    fc.assert(
      fc.property(fc.double({ min: -120, max: 6, noNaN: true }), (db) => {
        expect(meterShare(db + 0.5)).toBeGreaterThanOrEqual(meterShare(db));
      }),
    );
  });

  it.each([
    [-6, true, /^Too loud/],
    [-100, false, /^No sound comes in/],
    [TOO_QUIET_DB - 1, false, /^Very quiet/],
    [-20, false, /good/],
  ])('at %s dB, clipped %s, says what to do', (loudestDb, clipped, words) => {
    expect(levelAdvice(loudestDb, clipped)).toMatch(words);
  });
});
