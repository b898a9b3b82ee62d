/** A module's memory. */
export interface WasmMemory {
  readonly buffer: ArrayBuffer;
  grow(pages: number): number;
}

/** The little of WebAssembly that is used; the engine compiles without the browser's types. */
declare const WebAssembly:
  | {
      validate(bytes: Uint8Array<ArrayBuffer>): boolean;
      Module: new (bytes: Uint8Array<ArrayBuffer>) => object;
      Instance: new (module: object) => { readonly exports: unknown };
    }
  | undefined;

/** Compiled module → what it exports; undefined where WebAssembly or its SIMD is missing or forbidden. */
export function openWasm<Exports>(compiled: Uint8Array<ArrayBuffer>): Exports | undefined {
  if (typeof WebAssembly === 'undefined') return undefined;
  try {
    if (!WebAssembly.validate(compiled)) return undefined;
    return new WebAssembly.Instance(new WebAssembly.Module(compiled)).exports as Exports;
  } catch {
    // A page's content security policy may forbid compiling; plain code serves there.
    return undefined;
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
