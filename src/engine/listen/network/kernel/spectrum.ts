import type { Kernel, Spectrum } from './types.ts';

/** Puts what a spectrum of that size needs into a kernel's memory; `window` as long or shorter, the rest is 0. */
export function placeSpectrum(kernel: Kernel, size: number, window: Float64Array): Spectrum {
  const half = size / 2;
  const quarter = half / 4;
  const angles = (count: number, of: number, times: number): Float64Array =>
    Float64Array.from({ length: count }, (_, p) => (-2 * Math.PI * p * times) / of);
  const turns = [1, 2, 3].flatMap((times) => {
    const turned = angles(quarter, half, times);
    return [turned.map(Math.cos), turned.map(Math.sin)];
  });
  const split = angles(half, size, 1);
  return {
    size,
    window: place(kernel, [window, new Float64Array(size - window.length)]),
    turns: place(kernel, turns),
    split: place(kernel, [split.map(Math.cos), split.map(Math.sin)]),
    work: kernel.reserve(4 * 4 * (half + 4)),
  };
}

/** The same spectrum of another window. */
export function withWindow(kernel: Kernel, spectrum: Spectrum, window: Float64Array): Spectrum {
  const rest = new Float64Array(spectrum.size - window.length);
  return { ...spectrum, window: place(kernel, [window, rest]) };
}

function place(kernel: Kernel, rows: readonly Float64Array[]): number {
  const length = rows.reduce((sum, row) => sum + row.length, 0);
  const address = kernel.reserve(4 * length);
  const placed = new Float32Array(kernel.memory, address, length);
  let at = 0;
  for (const row of rows) {
    placed.set(row, at);
    at += row.length;
  }
  return address;
}
