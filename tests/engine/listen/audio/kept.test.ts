import { expect, it } from 'vitest';
import { KeptSamples } from '../../../../src/engine/listen/audio/index.ts';

/** Of so many samples, asked one by one, `toEqual` takes seconds. */
const same = (one: Float32Array, other: Float32Array): boolean =>
  one.length === other.length && one.every((value, at) => value === other[at]);

it('keeps every sample in order, however it comes and however often it is looked at', () => {
  const kept = new KeptSamples();
  expect(kept.samples).toHaveLength(0);
  let next = 0;
  for (const length of [1, 4096, 131_072, 200_000, 7, 131_071, 300_000, 5]) {
    kept.push(
      Float64Array.from({ length: length + 3 }, () => next++),
      length,
    );
    next -= 3;
    expect(kept.cut(next - 2, next + 9)).toEqual(
      Float32Array.of(...[next - 2, next - 1].filter((at) => at >= 0)),
    );
    if (length > 100_000) expect(kept.samples).toHaveLength(next);
  }
  const { samples } = kept;
  expect(samples).toHaveLength(next);
  expect(samples.every((value, at) => value === at)).toBe(true);
  expect(same(kept.samples, samples)).toBe(true);
  expect(same(kept.cut(131_070, 300_000), samples.subarray(131_070, 300_000))).toBe(true);
  expect(same(kept.cut(-5, 3), samples.subarray(0, 3))).toBe(true);
});
