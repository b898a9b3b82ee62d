import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readReview } from '../../../src/io/review/index.ts';
import type { Review } from '../../../src/io/review/index.ts';
import { reviewPage } from '../../../src/ui/review/page/in-node.ts';
import { goodFiles, mutatedFiles } from '../../io/review/hostile.ts';

describe('a mutated review that is read', () => {
  it.each(['reports changed', 'what it says of itself changed'])(
    'can be drawn, and brings no tag of its own: %s',
    async (kind) => {
      const files = await goodFiles();
      let drawn = 0;
      await fc.assert(
        fc.asyncProperty(
          mutatedFiles(files)[kind]!.map((bytes) => ({
            bytes,
            [fc.toStringMethod]: () => `${bytes.length} bytes`,
          })),
          async ({ bytes }) => {
            const review: Review | null = await readReview(new Blob([bytes])).catch(() => null);
            if (review === null) return;
            drawn++;
            const html = reviewPage(review, 'en');
            expect(
              /<script|<img|<iframe|<a\b|NaN|Infinity|undefined|\[object/.exec(html)?.[0],
            ).toBeUndefined();
          },
        ),
        { numRuns: 200 },
      );
      expect(drawn).toBeGreaterThan(20);
    },
  );
});
