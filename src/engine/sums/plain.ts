import type { Dense, Dots, Folding, Projection, Sums } from './types.ts';

/** The sums in plain typed arrays, for where WebAssembly is missing. */
export function plainSums(): Sums {
  let memory = new ArrayBuffer(0);
  let reserved = 0;
  let float = new Float32Array(memory);
  return {
    kind: 'plain',
    get memory() {
      return memory;
    },
    reserve(bytes) {
      const address = reserved;
      reserved += 16 * Math.ceil(bytes / 16);
      if (reserved > memory.byteLength) {
        const larger = new Float32Array(reserved / 2);
        larger.set(float);
        float = larger;
        memory = larger.buffer;
      }
      return address;
    },
    dots: (job, count) => dots(memory, job, count),
    fold: (job, frames) => fold(float, job, frames),
    project: (job, frames) => project(float, job, frames),
    dense: (job, rows) => dense(float, job, rows),
  };
}

function dots(memory: ArrayBuffer, { places, length, output }: Dots, count: number): void {
  const numbers = new Float64Array(memory);
  const pairs = new Int32Array(memory, places, 2 * count);
  for (let index = 0; index < count; index++) {
    const left = pairs[2 * index]! >> 3;
    const right = pairs[2 * index + 1]! >> 3;
    let a = 0;
    let b = 0;
    let c = 0;
    let d = 0;
    for (let i = 0; i < length; i += 4) {
      a += numbers[left + i]! * numbers[right + i]!;
      b += numbers[left + i + 1]! * numbers[right + i + 1]!;
      c += numbers[left + i + 2]! * numbers[right + i + 2]!;
      d += numbers[left + i + 3]! * numbers[right + i + 3]!;
    }
    numbers[(output >> 3) + index] = a + b + c + d;
  }
}

function fold(float: Float32Array, job: Folding, frames: number): void {
  const { half } = job;
  for (let frame = 0; frame < frames; frame++) {
    const centre = (job.centre + frame * job.hop) >> 2;
    const even = (job.even >> 2) + frame * half;
    const odd = (job.odd >> 2) + frame * half;
    for (let m = 0; m < half; m++) {
      const after = float[centre + m]!;
      const before = float[centre - m]!;
      float[even + m] = after + before;
      float[odd + m] = after - before;
    }
    float[even] = float[centre]!;
  }
}

function project(float: Float32Array, job: Projection, frames: number): void {
  const cosines = job.cosines >> 2;
  const sines = job.sines >> 2;
  for (let frame = 0; frame < frames; frame++) {
    const even = (job.even + frame * job.row) >> 2;
    const odd = (job.odd + frame * job.row) >> 2;
    let real = 0;
    let imaginary = 0;
    for (let i = 0; i < job.length; i++) {
      real += float[even + i]! * float[cosines + i]!;
      imaginary += float[odd + i]! * float[sines + i]!;
    }
    float[(job.output + frame * job.stride) >> 2] = real * real + imaginary * imaginary;
  }
}

function dense(float: Float32Array, job: Dense, rows: number): void {
  const { inputs, outputs, least } = job;
  for (let row = 0; row < rows; row++) {
    const input = (job.input + row * job.inputStride) >> 2;
    const to = (job.output + row * job.outputStride) >> 2;
    for (let output = 0; output < outputs; output++) {
      const weight = (job.weights >> 2) + output * inputs;
      // Two sums side by side: neither need wait for the other.
      let even = float[(job.bias >> 2) + output]!;
      let odd = 0;
      for (let i = 0; i < inputs; i += 2) {
        even += float[weight + i]! * float[input + i]!;
        odd += float[weight + i + 1]! * float[input + i + 1]!;
      }
      float[to + output] = Math.max(even + odd, least);
    }
  }
}
