import type { Kernel, Spectrum } from './types.ts';

/** Puts what a spectrum of that size needs into a kernel's memory; `window` as long or shorter, the rest is 0. */
export function placeSpectrum(kernel: Kernel, size: number, window: Float64Array): Spectrum {
  const half = size / 2;
  const quarter = half / 4;
  const turns = [1, 2, 3].flatMap((times) => circle(quarter, (-2 * Math.PI * times) / half));
  return {
    size,
    window: place(kernel, [window, new Float64Array(size - window.length)]),
    turns: place(kernel, turns),
    split: place(kernel, circle(half, (-2 * Math.PI) / size)),
    work: kernel.reserve(4 * 4 * (half + 4)),
  };
}

/** The same spectrum of another window. */
export function withWindow(kernel: Kernel, spectrum: Spectrum, window: Float64Array): Spectrum {
  const rest = new Float64Array(spectrum.size - window.length);
  return { ...spectrum, window: place(kernel, [window, rest]) };
}

/** Cosines and sines of so many multiples of an angle. */
function circle(count: number, angle: number): readonly Float64Array[] {
  const [cosines, sines] = [new Float64Array(count), new Float64Array(count)];
  for (let p = 0; p < count; p++) {
    cosines[p] = Math.cos(angle * p);
    sines[p] = Math.sin(angle * p);
  }
  return [cosines, sines];
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
