import { describe, expect, it } from 'vitest';
import { tapped, tappedBpm } from '../../../src/ui/sitting/state/tap.ts';

const taps = (...atMs: readonly number[]): readonly number[] =>
  atMs.reduce<readonly number[]>((before, nowMs) => tapped(before, nowMs), []);

describe('tapping a tempo', () => {
  it('wants three taps', () => {
    expect(tappedBpm(taps(0, 750))).toBeNull();
    expect(tappedBpm(taps(0, 750, 1500))).toBe(80);
  });

  it('goes by the median interval: one clumsy tap does no harm', () => {
    expect(tappedBpm(taps(0, 750, 1400, 2150, 2900))).toBe(80);
  });

  it('of an even number of intervals takes the middle between the two middle ones', () => {
    // intervals 600, 700, 800, 900: median 750
    expect(tappedBpm(taps(0, 600, 1300, 2100, 3000))).toBe(80);
  });

  it('begins anew after a pause longer than the slowest beat', () => {
    expect(taps(0, 500, 1000, 4000)).toEqual([4000]);
    expect(tappedBpm(taps(0, 2000, 4000))).toBe(30);
  });

  it('follows a change of mind: only the last eight taps count', () => {
    const slow = Array.from({ length: 10 }, (_, index) => index * 1000);
    const quick = Array.from({ length: 8 }, (_, index) => 9500 + index * 500);
    expect(tappedBpm(taps(...slow, ...quick))).toBe(120);
  });
});
