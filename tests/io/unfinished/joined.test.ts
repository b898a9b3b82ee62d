import fc from 'fast-check';
import { expect, it } from 'vitest';
import { joined } from '../../../src/io/unfinished/index.ts';

it('pieces are joined to every sample once, in order, whatever their lengths', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 1, maxLength: 20 }), (lengths) => {
      let next = 0;
      const pieces = lengths.map((length) => {
        const channel = Float32Array.from({ length }, () => next++);
        return [channel, channel.map((value) => -value)];
      });
      const [left, right] = joined(pieces);
      expect(left).toEqual(Float32Array.from({ length: next }, (_, index) => index));
      expect(right).toEqual(left!.map((value) => -value));
    }),
  );
});

it('no pieces are no channels', () => {
  expect(joined([])).toEqual([]);
});

it('a channel that came late is silence before', () => {
  expect(joined([[Float32Array.of(1, 2)], [Float32Array.of(3), Float32Array.of(4)]])).toEqual([
    Float32Array.of(1, 2, 3),
    Float32Array.of(0, 0, 4),
  ]);
});
