import type { Kernel } from './types.ts';

/** The little of WebAssembly that is used; the engine compiles without the browser's types. */
declare const WebAssembly:
  | {
      validate(bytes: Uint8Array<ArrayBuffer>): boolean;
      Module: new (bytes: Uint8Array<ArrayBuffer>) => object;
      Instance: new (module: object) => { readonly exports: unknown };
    }
  | undefined;

/** What kernel.as exports. */
interface Exports {
  readonly memory: { readonly buffer: ArrayBuffer; grow(pages: number): number };
  readonly multiply: (...args: readonly number[]) => void;
  readonly smear: (...args: readonly number[]) => void;
  readonly spectrum: (...args: readonly number[]) => void;
  readonly collect: (...args: readonly number[]) => void;
}

const PAGE_BYTES = 65536;

/** Compiled kernel → kernel; undefined where WebAssembly or its SIMD is missing or forbidden. */
export function wasmKernel(compiled: Uint8Array<ArrayBuffer>): Kernel | undefined {
  if (typeof WebAssembly === 'undefined') return undefined;
  let exports: Exports;
  try {
    if (!WebAssembly.validate(compiled)) return undefined;
    exports = new WebAssembly.Instance(new WebAssembly.Module(compiled)).exports as Exports;
  } catch {
    // A page's content security policy may forbid compiling; the plain kernel serves there.
    return undefined;
  }
  const { memory, multiply, smear, spectrum, collect } = exports;
  let reserved = 0;
  return {
    kind: 'wasm',
    get memory() {
      return memory.buffer;
    },
    reserve(bytes) {
      const address = reserved;
      reserved += 16 * Math.ceil(bytes / 16);
      const missing = reserved - memory.buffer.byteLength;
      if (missing > 0) memory.grow(Math.ceil(missing / PAGE_BYTES));
      return address;
    },
    multiply: (job, positions, input, output) =>
      multiply(
        input,
        job.inputStride,
        job.offsets,
        job.pairs,
        job.weights,
        job.bias,
        job.biasStride,
        output,
        job.outputStride,
        positions,
        job.outputs,
        job.shift,
        job.mode,
      ),
    smear: (job, positions, output) =>
      smear(job.rows, job.taps, job.weights, output, job.outputStride, positions, job.channels, job.shift),
    spectrum: (job, samples, output) =>
      spectrum(samples, job.size, job.window, job.turns, job.split, job.work, output),
    collect: (job, power, gain, output) =>
      collect(
        power,
        job.table,
        job.weights,
        job.count,
        gain,
        job.floor,
        job.slope,
        job.rise,
        output,
        job.outputStride,
      ),
  };
}
