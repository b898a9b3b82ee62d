import { openKernel, placeSpectrum, withWindow } from '../network/kernel/index.ts';
import type { Kernel, Spectrum } from '../network/kernel/index.ts';

/** A window of some length, ready to be used. */
export interface PowerWindow {
  readonly job: Spectrum;
  readonly length: number;
}

const opened = new Map<number, WindowedPower>();

/** The one of a size that all listenings share: memories of WebAssembly are few, and windows take longer to make than to use. */
export function windowedPower(size: number): WindowedPower {
  const power = opened.get(size) ?? new WindowedPower(size);
  opened.set(size, power);
  return power;
}

/** Samples × window → power spectrum, padded with silence to one size, by the network's kernel. Holds its buffers. */
export class WindowedPower {
  readonly #kernel: Kernel;
  readonly #spectrum: Spectrum;
  readonly #samples: number;
  readonly #power: number;
  readonly #windows = new Map<string, PowerWindow>();

  /** @param size a power of two from 256 up */
  constructor(size: number, kind: Kernel['kind'] = 'wasm') {
    this.#kernel = openKernel(kind);
    this.#spectrum = placeSpectrum(this.#kernel, size, new Float64Array(0));
    this.#samples = this.#kernel.reserve(4 * size);
    this.#power = this.#kernel.reserve(4 * (size / 2 + 4));
  }

  /** A window by its name, made when it is first asked for; at most as many values as the size. */
  window(name: string, make: () => Float64Array): PowerWindow {
    const window = this.#windows.get(name) ?? this.#place(make());
    this.#windows.set(name, window);
    return window;
  }

  /** As many samples as the window is long → size / 2 powers into `out`: a full-scale sine at the middle of a bin reads 1. */
  measure(samples: Float64Array, { job, length }: PowerWindow, out: Float32Array): void {
    const { memory } = this.#kernel;
    new Float32Array(memory, this.#samples, length).set(samples.subarray(0, length));
    this.#kernel.spectrum(job, this.#samples, this.#power);
    out.set(new Float32Array(memory, this.#power, out.length));
  }

  #place(values: Float64Array): PowerWindow {
    const sum = values.reduce((total, value) => total + value, 0);
    const scaled = values.map((value) => (2 * value) / sum);
    return { job: withWindow(this.#kernel, this.#spectrum, scaled), length: values.length };
  }
}
