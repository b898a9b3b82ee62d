import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { tellNotice } from '../../../src/engine/index.ts';
import { DecodeError } from '../../../src/io/decode/index.ts';
import { decodeInNode } from '../../../src/io/decode/node.ts';
import { harmed, HARMS, INSIDES } from '../../support/damage.ts';
import { sample } from './reference.ts';

const FILES = readdirSync(resolve(import.meta.dirname, 'samples')).filter((file) => !file.endsWith('.md'));

/** Damage done to a file: bytes overwritten (mostly in its header), then cut short. */
const damage = fc.record({
  overwrite: fc.array(
    fc.record({
      at: fc.oneof(fc.double({ min: 0, max: 0.05, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
      byte: fc.nat(255),
    }),
    { minLength: 1, maxLength: 12 },
  ),
  keep: fc.oneof(fc.constant(1), fc.double({ min: 0, max: 1, noNaN: true })),
});

/** Decoders of others print what they stumble over; nothing to see in a test of damage. */
beforeAll(() => void vi.spyOn(console, 'error').mockImplementation(() => undefined));
beforeAll(() => void vi.spyOn(console, 'warn').mockImplementation(() => undefined));
afterAll(() => void vi.restoreAllMocks());

/** Whatever it holds, it ends within five seconds in sound or a reason, and tells nothing of a program's insides. */
async function endsSoundly(bytes: Uint8Array<ArrayBuffer>, file: string): Promise<void> {
  const startedMs = performance.now();
  const said = await decodeInNode(bytes.buffer, file).then(
    ({ remarks }) => remarks.map((remark) => tellNotice(remark)).join(' '),
    (error: unknown) => {
      expect(error).toBeInstanceOf(DecodeError);
      return (error as DecodeError).message;
    },
  );
  expect(said).not.toMatch(INSIDES);
  expect(performance.now() - startedMs).toBeLessThan(5_000);
}

describe('a damaged file', () => {
  it.each(FILES)('either decodes or is refused with a reason: %s', { timeout: 60_000 }, async (file) => {
    const whole = new Uint8Array(sample(file));
    await fc.assert(
      fc.asyncProperty(damage, async ({ overwrite, keep }) => {
        const bytes = whole.slice(0, Math.ceil(whole.length * keep));
        for (const { at, byte } of overwrite) bytes[Math.floor(at * bytes.length)] = byte;
        try {
          const { channels, sampleRateHz } = await decodeInNode(bytes.buffer, file);
          expect(channels.length).toBeGreaterThan(0);
          expect(new Set(channels.map(({ length }) => length)).size).toBe(1);
          expect(channels[0]!.every(Number.isFinite)).toBe(true);
          expect(sampleRateHz).toBeGreaterThan(0);
        } catch (error) {
          expect(error).toBeInstanceOf(DecodeError);
          expect((error as DecodeError).message).toMatch(new RegExp(`^${file}: [A-Z]`));
          expect((error as DecodeError).message).not.toMatch(INSIDES);
        }
      }),
      { seed: 20_251, numRuns: Number(process.env['FUZZ_RUNS'] ?? 60) },
    );
  });
});

/** The containers and packings that are decoded by code of this project. */
const OUR_OWN = FILES.filter((file) => /\.(caf|aiff|aifc)$|law|adpcm/.test(file));

/** A stretch of a file that a broken-off transfer left as zeros, or bytes of another file's, then its end lost. */
const transfer = fc.record({
  file: fc.constantFrom(...OUR_OWN),
  from: fc.double({ min: 0, max: 1, noNaN: true }),
  to: fc.oneof(fc.constant(1), fc.double({ min: 0, max: 1, noNaN: true })),
  fill: fc.oneof(fc.constant(0), fc.nat(255)),
  keep: fc.oneof(fc.constant(1), fc.double({ min: 0, max: 1, noNaN: true })),
});

describe('a file of a container that is read here without another library', () => {
  it(
    'ends within five seconds in sound or a reason, however it was broken off',
    { timeout: 60_000 },
    async () => {
      expect(OUR_OWN.length).toBeGreaterThan(12);
      await fc.assert(
        fc.asyncProperty(transfer, async ({ file, from, to, fill, keep }) => {
          const whole = new Uint8Array(sample(file));
          const bytes = whole.slice(0, Math.ceil(whole.length * keep));
          const ends = [from, to].map((share) => Math.floor(share * bytes.length)).sort((a, b) => a - b);
          bytes.fill(fill, ends[0], ends[1]);
          await endsSoundly(bytes, file);
        }),
        { seed: 20_252, numRuns: Number(process.env['FUZZ_RUNS'] ?? 60) * 5 },
      );
    },
  );
});

describe('a file that was harmed on its way', () => {
  /** tests/bench/damage.ts does the same with thousands, each where it can be ended from outside. */
  it.each(FILES)(
    'ends within five seconds in sound or a reason, its last part zeros or gone: %s',
    async (file) => {
      const whole = new Uint8Array(sample(file));
      const tails = [0.05, 0.3, 0.6, 0.9, 0.99].map((share) => whole.slice().fill(0, share * whole.length));
      for (const bytes of [...tails, ...HARMS.map((harm, at) => harmed(whole, harm, at))]) {
        await endsSoundly(bytes, file);
      }
    },
  );

  it.each(['opus-mono.webm', 'opus-stereo.webm', 'video.webm'])(
    'keeps the sound before what is damaged, and says so: %s',
    async (file) => {
      const bytes = new Uint8Array(sample(file));
      const { channels, sampleRateHz, remarks } = await decodeInNode(
        bytes.fill(0, 0.6 * bytes.length).buffer,
        file,
      );
      expect(channels[0]!.length / sampleRateHz).toBeGreaterThan(0.15);
      expect(channels[0]!.length / sampleRateHz).toBeLessThan(0.3);
      expect(remarks).toEqual([{ notice: 'damaged-after' }]);
    },
  );
});
