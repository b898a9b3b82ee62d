import { expect, it } from 'vitest';
import { KeptSamples } from '../../../../src/engine/listen/audio/index.ts';

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
  expect(kept.samples).toEqual(samples);
  expect(kept.cut(131_070, 300_000)).toEqual(samples.subarray(131_070, 300_000));
  expect(kept.cut(-5, 3)).toEqual(samples.subarray(0, 3));
});
