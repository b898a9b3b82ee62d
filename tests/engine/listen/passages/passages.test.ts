import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPassages } from '../../../../src/engine/listen/passages/index.ts';

describe('passages', () => {
  it.each([
    ['none without notes', [], 0],
    ['one in steady playing', [1, 1.5, 2, 2.5], 1],
    ['two around a pause of three seconds', [1, 1.5, 2, 5, 5.5], 2],
    ['one in slow playing with a note every two seconds', [1, 3, 5, 7], 1],
    ['one where a pause is no longer than three usual intervals', [1, 3, 5, 9.5, 11.5], 1],
  ])('are %s', (_, onsets, count) => {
    expect(findPassages(onsets, 20)).toHaveLength(count);
  });

  it('hold every onset, in order, without overlap', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { maxLength: 40 }), (times) => {
        const onsets = [...times].sort((a, b) => a - b);
        const passages = findPassages(onsets, 100);
        for (const time of onsets)
          expect(passages.some(({ startSec, endSec }) => startSec <= time && time <= endSec)).toBe(true);
        passages.forEach(({ startSec, endSec }, i) => {
          expect(endSec).toBeGreaterThanOrEqual(startSec);
          if (i > 0) expect(startSec).toBeGreaterThanOrEqual(passages[i - 1]!.endSec);
        });
      }),
    );
  });
});
