import { decodeBase64 } from './base64.ts';

/** A module's memory. */
export interface WasmMemory {
  readonly buffer: ArrayBuffer;
  grow(pages: number): number;
}

/** The little of WebAssembly that is used; the engine compiles without the browser's types. */
declare const WebAssembly:
  | {
      Module: new (bytes: Uint8Array<ArrayBuffer>) => object;
      Instance: new (module: object) => { readonly exports: unknown };
    }
  | undefined;

/** What was compiled before, by its base64: each listening opens the same modules; null: could not be compiled. */
const compiled = new Map<string, object | null>();

/** A module in base64 → what a fresh instance exports; undefined where WebAssembly or its SIMD is missing or forbidden. */
export function openWasm<Exports>(base64: string): Exports | undefined {
  if (typeof WebAssembly === 'undefined') return undefined;
  let module = compiled.get(base64);
  if (module === undefined) compiled.set(base64, (module = compile(base64)));
  return module === null ? undefined : (new WebAssembly.Instance(module).exports as Exports);
}

function compile(base64: string): object | null {
  const bytes = decodeBase64(base64);
  try {
    return new WebAssembly!.Module(bytes);
  } catch {
    // SIMD may be missing, or a page's content security policy forbid compiling; plain code serves there.
    return null;
  }
}

const PAGE_BYTES = 65536;

/** A memory of which nothing is used yet → reserves bytes in it, aligned to 16, and tells their address. Views on its buffer end where it grows. */
export function reservationsIn(memory: WasmMemory): (bytes: number) => number {
  let reserved = 0;
  return (bytes) => {
    const address = reserved;
    reserved += 16 * Math.ceil(bytes / 16);
    const missing = reserved - memory.buffer.byteLength;
    if (missing > 0) memory.grow(Math.ceil(missing / PAGE_BYTES));
    return address;
  };
}
