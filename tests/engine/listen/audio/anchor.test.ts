import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Anchor, RATE_HZ } from '../../../../src/engine/listen/audio/index.ts';

const PERIOD = 24_576;
/** A sound → what an anchor made of it: the samples, the silence before, and where the first blow fell. */
function anchored(sound: Float64Array, blocks: readonly number[] = [1000]) {
  const out: number[] = [];
  let blow: number | null = null;
  const anchor = new Anchor(
    PERIOD,
    (block, length) => out.push(...block.subarray(0, length)),
    (sample) => (blow = sample),
  );
  for (let at = 0, turn = 0; at < sound.length; turn++) {
    const part = sound.slice(at, at + blocks[turn % blocks.length]!);
    anchor.push(part, part.length);
    at += part.length;
  }
  anchor.finish();
  return { out, padding: anchor.padding, blow };
}
/** Silence, a soft noise, then decaying tones that begin at these samples. */
const tones = (starts: readonly number[], length: number, quietFrom = 0): Float64Array =>
  Float64Array.from({ length }, (_, i) =>
    starts.reduce(
      (sum, start) =>
        i < start ? sum : sum + 0.3 * Math.exp((start - i) / 9000) * Math.sin(0.2 * (i - start)),
      i < quietFrom ? 0 : 0.0005 * Math.sin(i * i),
    ),
  );

describe('a sound anchored at its first blow', () => {
  const starts = [20_000, 26_000, 32_000];

  it('is the sound itself with silence before it, whatever the blocks', () => {
    const sound = tones(starts, 3 * RATE_HZ);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 9000 }), { minLength: 1, maxLength: 5 }), (blocks) => {
        const { out, padding } = anchored(sound, blocks);
        expect(out).toHaveLength(sound.length + padding);
        expect(out.slice(0, padding).every((value) => value === 0)).toBe(true);
        expect(sound.findIndex((value, at) => !Object.is(value, out[padding + at]))).toBe(-1);
        expect(anchored(sound, blocks).padding).toBe(anchored(sound).padding);
      }),
      { numRuns: 5 },
    );
  });

  it('has its first blow on the grid, wherever it lay before, though a noise sets in earlier', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60_000 }), fc.boolean(), (later, noisy) => {
        const moved = starts.map((start) => start + later);
        const { blow, padding } = anchored(tones(moved, 4 * RATE_HZ + later, noisy ? moved[0]! - 15_000 : 0));
        expect(blow! % PERIOD).toBe(0);
        expect(blow! - padding - moved[0]!).toBeGreaterThanOrEqual(0);
        expect(blow! - padding - moved[0]!).toBeLessThan(64);
      }),
      { numRuns: 12 },
    );
  });

  it('stays where it is when nothing in it is a blow', () => {
    expect(anchored(new Float64Array(RATE_HZ)).padding).toBe(0);
    expect(anchored(tones([], 20 * RATE_HZ)).padding).toBe(0);
  });
});
