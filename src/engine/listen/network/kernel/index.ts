export type * from './types.ts';
export { plainKernel } from './plain.ts';
export { wasmKernel } from './wasm.ts';
