import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createSums } from '../../../src/engine/sums/index.ts';
import type { Sums } from '../../../src/engine/sums/index.ts';
import { createRandom } from '../../support/random.ts';

const ROOM = resolve(import.meta.dirname, '../../../src/engine/sums');
const KINDS = ['wasm', 'plain'] as const;

function open(kind: Sums['kind']): Sums {
  const sums = createSums(kind);
  expect(sums.kind).toBe(kind);
  return sums;
}

function placed(sums: Sums, values: Float32Array | Float64Array | Int32Array): number {
  const address = sums.reserve(values.byteLength);
  new Uint8Array(sums.memory, address, values.byteLength).set(
    new Uint8Array(values.buffer, values.byteOffset, values.byteLength),
  );
  return address;
}

const noise = (seed: number, count: number): Float32Array => {
  const random = createRandom(seed);
  return Float32Array.from({ length: count }, () => random.uniform(-1, 1));
};

describe('the compiled sums', () => {
  it('were built from the kernel.as that lies beside them', () => {
    const hash = createHash('sha256')
      .update(readFileSync(resolve(ROOM, 'kernel.as')))
      .digest('hex');
    expect(readFileSync(resolve(ROOM, 'compiled.ts'), 'utf8')).toContain(hash);
  });

  it('multiply rows as the plain ones do, to the last bit', () => {
    const results = KINDS.map((kind) => {
      const sums = open(kind);
      const [a, b] = [
        placed(sums, Float64Array.from(noise(1, 96))),
        placed(sums, Float64Array.from(noise(2, 96))),
      ];
      const places = placed(sums, Int32Array.from([a, b, a + 8, b + 24, a + 80, b]));
      const output = sums.reserve(3 * 8);
      sums.dots({ places, length: 48, output }, 3);
      return [...new Float64Array(sums.memory, output, 3)];
    });
    expect(results[0]).toEqual(results[1]);
    const [first, second] = [noise(1, 48), noise(2, 48)];
    const wanted = first.reduce((sum, value, i) => sum + value * second[i]!, 0);
    expect(results[0]![0]).toBeCloseTo(wanted, 12);
  });
});

describe.each(KINDS)('sums (%s)', (kind) => {
  it('keep what stood in the memory where it grows', () => {
    const sums = open(kind);
    const address = placed(sums, Float32Array.of(1, 2, 3));
    sums.reserve(200_000);
    expect([...new Float32Array(sums.memory, address, 4)]).toEqual([1, 2, 3, 0]);
  });

  it('fold frames about their centres: sums and differences of both sides', () => {
    const sums = open(kind);
    const [half, hop, frames] = [8, 4, 3];
    const sound = noise(3, 40);
    const centre = placed(sums, sound) + 10 * 4;
    const [even, odd] = [sums.reserve(frames * half * 4), sums.reserve(frames * half * 4)];
    sums.fold({ centre, hop: hop * 4, half, even, odd }, frames);
    const seen = [even, odd].map((at) => [...new Float32Array(sums.memory, at, frames * half)]);
    const wanted = [1, -1].map((sign) =>
      Array.from({ length: frames * half }, (_, at) => {
        const [middle, m] = [10 + hop * Math.floor(at / half), at % half];
        if (m === 0) return sign > 0 ? sound[middle]! : 0;
        return Math.fround(sound[middle + m]! + sign * sound[middle - m]!);
      }),
    );
    expect(seen).toEqual(wanted);
  });

  it.each([4, 8, 12])('tell the squared length of a projection, %i numbers long', (length) => {
    const sums = open(kind);
    const [even, odd, cosines, sines] = [4, 5, 6, 7].map((seed) => noise(seed, 32));
    const row = 16;
    const job = {
      even: placed(sums, even!),
      odd: placed(sums, odd!),
      row: row * 4,
      cosines: placed(sums, cosines!),
      sines: placed(sums, sines!),
      length,
      output: sums.reserve(64),
      stride: 8,
    };
    sums.project(job, 2);
    const seen = new Float32Array(sums.memory, job.output, 4);
    [0, 1].forEach((frame) => {
      let [real, imaginary] = [0, 0];
      for (let i = 0; i < length; i++) {
        real += even![frame * row + i]! * cosines![i]!;
        imaginary += odd![frame * row + i]! * sines![i]!;
      }
      expect(seen[2 * frame]).toBeCloseTo(real ** 2 + imaginary ** 2, 5);
    });
  });

  it.each([0, -Infinity])('are a dense layer over rows, no less than %f', (least) => {
    const sums = open(kind);
    const [inputs, outputs, rows, stride] = [12, 8, 3, 4];
    const [weights, bias, input] = [noise(8, inputs * outputs), noise(9, outputs), noise(10, 40)];
    const output = sums.reserve(rows * outputs * 4);
    const job = {
      weights: placed(sums, weights),
      bias: placed(sums, bias),
      inputs,
      outputs,
      input: placed(sums, input),
      inputStride: stride * 4,
      output,
      outputStride: outputs * 4,
      least,
    };
    sums.dense(job, rows);
    new Float32Array(sums.memory, output, rows * outputs).forEach((value, at) => {
      const [row, out] = [Math.floor(at / outputs), at % outputs];
      let sum = bias[out]!;
      for (let i = 0; i < inputs; i++) sum += weights[out * inputs + i]! * input[row * stride + i]!;
      expect(value).toBeCloseTo(Math.max(sum, least), 5);
    });
  });
});
