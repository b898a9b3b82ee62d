export type * from './types.ts';
import { openWasm, reservationsIn } from '../base/wasm.ts';
import type { WasmMemory } from '../base/wasm.ts';
import { KERNEL_BASE64 } from './compiled.ts';
import { plainSums } from './plain.ts';
import type { Sums } from './types.ts';

/** What kernel.as exports. */
interface Exports {
  readonly memory: WasmMemory;
  readonly dots: (...args: readonly number[]) => void;
  readonly fold: (...args: readonly number[]) => void;
  readonly project: (...args: readonly number[]) => void;
  readonly dense: (...args: readonly number[]) => void;
}

/** Opens sums with a memory of their own. */
export function createSums(kind: Sums['kind'] = 'wasm'): Sums {
  const exports = kind === 'wasm' ? openWasm<Exports>(KERNEL_BASE64) : undefined;
  return exports === undefined ? plainSums() : wasmSums(exports);
}

function wasmSums({ memory, dots, fold, project, dense }: Exports): Sums {
  return {
    kind: 'wasm',
    get memory() {
      return memory.buffer;
    },
    reserve: reservationsIn(memory),
    dots: ({ places, length, output }, count) => dots(places, count, length, output),
    fold: ({ centre, hop, half, even, odd }, frames) => fold(centre, hop, frames, half, even, odd),
    project: ({ even, odd, row, cosines, sines, length, output, stride }, frames) =>
      project(even, odd, row, frames, cosines, sines, length, output, stride),
    dense: ({ weights, bias, inputs, outputs, input, inputStride, output, outputStride, least }, rows) =>
      dense(weights, bias, inputs, outputs, input, inputStride, rows, output, outputStride, least),
  };
}
