import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { readReview, ReviewError, writeReview } from '../../../src/io/review/index.ts';
import type { Review } from '../../../src/io/review/index.ts';
import { goodFiles, mutatedFiles } from './hostile.ts';
import { madeUp } from './made-up.ts';

/** 1000 files in all, over the kinds of change. */
const RUNS = 125;
const MOST_BYTES = 100 * 2 ** 20;

const KINDS = [
  'bytes flipped',
  'bytes of the directory flipped',
  'cut short or in the middle',
  'files left out, doubled, swapped or renamed',
  'lies in the directory',
  'what it says of itself changed',
  'reports changed',
  'other bytes',
] as const;
/** Changes after which the file, if it is read at all, must say what it said before: a checksum guards each byte. */
const GUARDED: ReadonlySet<string> = new Set(KINDS.slice(0, 3).concat('lies in the directory'));

describe('a thousand mutated reviews', () => {
  let files: Awaited<ReturnType<typeof goodFiles>>;
  beforeAll(async () => {
    files = await goodFiles();
  });

  it.each(KINDS)('are read whole or refused with a reason: %s', async (kind) => {
    let [read, refused] = [0, 0];
    const before = process.memoryUsage().arrayBuffers;
    await fc.assert(
      fc.asyncProperty(mutatedFiles(files)[kind]!.map(unprinted), async ({ bytes }) => {
        const outcome = await readReview(new Blob([bytes])).catch((error: unknown) => error);
        if (outcome instanceof Error) {
          refused++;
          expect(outcome).toBeInstanceOf(ReviewError);
          expect(outcome.message).toMatch(/^[A-Z].*\.$/s);
          expect(outcome.message.length).toBeLessThan(600);
          expect(outcome.message).not.toMatch(/[<>\p{Cc}\u202e]/u);
          return;
        }
        read++;
        const review = outcome as Review;
        if (GUARDED.has(kind)) expect(review).toEqual(madeUp());
        // Whole: it can be written again, and is the same then.
        expect(await readReview(await writeReview(review))).toEqual(review);
        expect(/\\u0000|\u202e|\\ud800/.test(JSON.stringify(review))).toBe(false);
      }),
      { numRuns: RUNS },
    );
    expect(Object.prototype).not.toHaveProperty('harmed');
    expect(read + refused).toBe(RUNS);
    expect(refused).toBeGreaterThan(0);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(MOST_BYTES);
  });
});

/** A failing file is told by its length: its bytes would fill the screen, and the seed gives it again. */
function unprinted(bytes: Uint8Array<ArrayBuffer>) {
  return { bytes, [fc.toStringMethod]: () => `a file of ${bytes.length} bytes` };
}
