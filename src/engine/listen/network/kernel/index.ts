export type * from './types.ts';
import { plainKernel } from './plain.ts';
import type { Kernel } from './types.ts';
import { wasmKernel } from './wasm.ts';
export { plainKernel, wasmKernel };
export { placeSpectrum, withWindow } from './spectrum.ts';

/** Opens a kernel with a memory of its own. */
export function openKernel(kind: Kernel['kind'] = 'wasm'): Kernel {
  return (kind === 'wasm' ? wasmKernel() : undefined) ?? plainKernel();
}
