import { openWasm, reservationsIn } from '../../../base/wasm.ts';
import type { WasmMemory } from '../../../base/wasm.ts';
import { decodeBase64 } from '../../../base/base64.ts';
import { KERNEL_BASE64 } from './compiled.ts';

/** A memory of float32 and the one sum that is taken in it over and over. Places are counted in numbers, not bytes. */
export interface Projector {
  /** `wasm`, or `plain` where that is missing: the same sums, some times slower */
  readonly kind: 'wasm' | 'plain';
  /** room for so many numbers, all 0 → its place */
  reserve(count: number): number;
  /** the numbers at a place; good until the next `reserve` */
  values(place: number, count: number): Float32Array;
  /** squared length of the vector (even · cosines, odd · sines); places of `count` numbers each, a multiple of 4 */
  power(even: number, odd: number, cosines: number, sines: number, count: number): number;
}

interface Exports {
  readonly memory: WasmMemory;
  readonly project: (...args: readonly number[]) => void;
}

const BYTES = Float32Array.BYTES_PER_ELEMENT;
/** what the kernel writes: two sums in four parts each */
const PARTS = 4;

export function createProjector(kind: Projector['kind'] = 'wasm'): Projector {
  const exports = kind === 'wasm' ? openWasm<Exports>(decodeBase64(KERNEL_BASE64)) : undefined;
  return exports === undefined ? plainProjector() : wasmProjector(exports);
}

function wasmProjector({ memory, project }: Exports): Projector {
  const reserveBytes = reservationsIn(memory);
  const out = reserveBytes(2 * PARTS * BYTES);
  let sums = new Float32Array(memory.buffer, out, 2 * PARTS);
  return {
    kind: 'wasm',
    reserve: (count) => reserveBytes(count * BYTES) / BYTES,
    values: (place, count) => new Float32Array(memory.buffer, place * BYTES, count),
    power: (even, odd, cosines, sines, count) => {
      project(even * BYTES, odd * BYTES, cosines * BYTES, sines * BYTES, count, out);
      // Memory that grew has moved.
      if (sums.length === 0) sums = new Float32Array(memory.buffer, out, 2 * PARTS);
      const real = sums[0]! + sums[1]! + sums[2]! + sums[3]!;
      const imaginary = sums[4]! + sums[5]! + sums[6]! + sums[7]!;
      return real * real + imaginary * imaginary;
    },
  };
}

function plainProjector(): Projector {
  let memory = new Float32Array(2 ** 16);
  let reserved = 0;
  return {
    kind: 'plain',
    reserve(count) {
      const place = reserved;
      reserved += count;
      if (reserved > memory.length) {
        const more = new Float32Array(2 * reserved);
        more.set(memory);
        memory = more;
      }
      return place;
    },
    values: (place, count) => memory.subarray(place, place + count),
    power(even, odd, cosines, sines, count) {
      let real = 0;
      let imaginary = 0;
      for (let i = 0; i < count; i++) {
        real += memory[even + i]! * memory[cosines + i]!;
        imaginary += memory[odd + i]! * memory[sines + i]!;
      }
      return real * real + imaginary * imaginary;
    },
  };
}
