import { openWasm, reservationsIn } from '../../../base/wasm.ts';
import type { WasmMemory } from '../../../base/wasm.ts';
import { KERNEL_BASE64 } from './compiled.ts';
import type { Kernel } from './types.ts';

/** What kernel.as exports. */
interface Exports {
  readonly memory: WasmMemory;
  readonly multiply: (...args: readonly number[]) => void;
  readonly smear: (...args: readonly number[]) => void;
  readonly spectrum: (...args: readonly number[]) => void;
  readonly collect: (...args: readonly number[]) => void;
}

/** The compiled kernel; undefined where WebAssembly or its SIMD is missing or forbidden. */
export function wasmKernel(): Kernel | undefined {
  const exports = openWasm<Exports>(KERNEL_BASE64);
  if (exports === undefined) return undefined;
  const { memory, multiply, smear, spectrum, collect } = exports;
  const reserve = reservationsIn(memory);
  return {
    kind: 'wasm',
    get memory() {
      return memory.buffer;
    },
    reserve,
    multiply: (job, positions, input, output) =>
      multiply(
        input,
        job.inputStride,
        job.offsets,
        job.pairs,
        job.weights,
        job.bias,
        job.biasStride,
        job.shared,
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
