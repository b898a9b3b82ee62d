import fc from 'fast-check';
import { expect, it } from 'vitest';
import { SampleHistory } from '../../../../src/engine/listen/audio/history.ts';

it('gives back what was taken last, and silence before the start, after the end and where it has let go', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 64 }),
      fc.array(fc.integer({ min: 0, max: 150 }), { maxLength: 6 }),
      fc.integer({ min: -100, max: 500 }),
      fc.integer({ min: 0, max: 120 }),
      (least, blocks, start, length) => {
        const history = new SampleHistory(least);
        const all: number[] = [];
        for (const size of blocks) {
          const block = Float64Array.from({ length: size + 2 }, (_, i) => all.length + i);
          history.append(block, 1, size + 1);
          all.push(...block.subarray(1, size + 1));
        }
        expect(history.end).toBe(all.length);
        const kept = 2 ** Math.ceil(Math.log2(least));
        const out = history.read(start, new Float64Array(length + 3).fill(-1), length);
        const wanted = Array.from({ length }, (_, i) =>
          start + i >= all.length - kept ? (all[start + i] ?? 0) : 0,
        );
        expect([...out]).toEqual([...wanted, -1, -1, -1]);
      },
    ),
    { numRuns: 300 },
  );
});
