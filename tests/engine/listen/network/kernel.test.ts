import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeBase64 } from '../../../../src/engine/base/base64.ts';
import { KERNEL_BASE64 } from '../../../../src/engine/listen/network/kernel/compiled.ts';
import { plainKernel, wasmKernel } from '../../../../src/engine/listen/network/kernel/index.ts';
import type { Kernel } from '../../../../src/engine/listen/network/kernel/index.ts';
import { createRandom } from '../../../support/random.ts';

const ROOM = resolve(import.meta.dirname, '../../../../src/engine/listen/network/kernel');

function bothKernels(): readonly [Kernel, Kernel] {
  const wasm = wasmKernel();
  if (!wasm) throw new Error('this Node has no WebAssembly with SIMD');
  return [wasm, plainKernel()];
}

/** The same random int16 numbers at the same addresses of both. */
function filled(kernel: Kernel, counts: readonly number[], seed: number, size: number): number[] {
  const random = createRandom(seed);
  const addresses = counts.map((count) => kernel.reserve(2 * count));
  const short = new Int16Array(kernel.memory);
  addresses.forEach((address, index) => {
    for (let i = 0; i < counts[index]!; i++) short[address / 2 + i] = Math.round(random.uniform(-size, size));
  });
  return addresses;
}

describe('the compiled kernel', () => {
  it('was built from the kernel.as that lies beside it', () => {
    const hash = createHash('sha256')
      .update(readFileSync(resolve(ROOM, 'kernel.as')))
      .digest('hex');
    expect(readFileSync(resolve(ROOM, 'compiled.ts'), 'utf8')).toContain(hash);
  });

  it('is small enough for a page to compile at once', () => {
    // Chromium's main thread long refused to compile more than 4096 bytes in one go (from memory)
    expect(decodeBase64(KERNEL_BASE64).length).toBeLessThan(4096);
  });

  it('multiplies as the plain one does, to the last bit', () => {
    fc.assert(
      fc.property(
        fc.record({
          seed: fc.nat(),
          size: fc.constantFrom(300, 32_767),
          pairs: fc.integer({ min: 1, max: 20 }),
          positions: fc.constantFrom(4, 8, 12),
          outputs: fc.constantFrom(8, 16),
          shift: fc.integer({ min: 1, max: 14 }),
          mode: fc.constantFrom(0 as const, 1 as const, 2 as const),
          ownBias: fc.boolean(),
        }),
        ({ seed, size, pairs, positions, outputs, shift, mode, ownBias }) => {
          const [left, right] = bothKernels().map((kernel) => {
            const [input, weights, bias, shared, output] = filled(
              kernel,
              [
                positions * 40 + 40,
                pairs * 2 * outputs,
                positions * outputs * 2,
                outputs * 2,
                positions * outputs,
              ],
              seed,
              size,
            ) as [number, number, number, number, number];
            const offsets = kernel.reserve(4 * pairs);
            new Int32Array(kernel.memory, offsets, pairs).forEach(
              (_, pair, all) => (all[pair] = (pair * 26) % 78),
            );
            kernel.multiply(
              {
                inputStride: 80,
                offsets,
                pairs,
                weights,
                bias,
                biasStride: ownBias ? 4 * outputs : 0,
                shared,
                outputStride: 2 * outputs,
                outputs,
                shift,
                mode,
              },
              positions,
              input,
              output,
            );
            return [...new Int16Array(kernel.memory, output, positions * outputs)];
          });
          expect(left).toEqual(right);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('smears as the plain one does, to the last bit', () => {
    fc.assert(
      fc.property(
        fc.record({
          seed: fc.nat(),
          channels: fc.constantFrom(8, 24),
          positions: fc.constantFrom(2, 4, 10),
          taps: fc.constantFrom(2, 6, 20),
        }),
        ({ seed, channels, positions, taps }) => {
          const [left, right] = bothKernels().map((kernel) => {
            const count = positions * channels;
            const [input, weights, output] = filled(
              kernel,
              [count + 8 * taps, channels * taps, count],
              seed,
              20_000,
            ) as [number, number, number];
            const rows = kernel.reserve(4 * taps);
            new Int32Array(kernel.memory, rows, taps).forEach((_, tap, all) => (all[tap] = input + 16 * tap));
            kernel.smear(
              { rows, taps, weights, outputStride: 2 * channels, channels, shift: 12 },
              positions,
              output,
            );
            return [...new Int16Array(kernel.memory, output, count)];
          });
          expect(left).toEqual(right);
        },
      ),
      { numRuns: 40 },
    );
  });
});
