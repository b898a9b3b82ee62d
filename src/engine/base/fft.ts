import FFT from 'fft.js';
import { UsageError } from './errors.ts';

/** Tables of one size serve all; a transform keeps nothing from one use to the next. */
const transforms = new Map<number, FFT>();

function transformOf(size: number): FFT {
  const transform = transforms.get(size) ?? new FFT(size);
  transforms.set(size, transform);
  return transform;
}

/**
 * Real signal → power spectrum, with the buffers for one size. Float64Array throughout: fft.js slows threefold when one
 * process mixes array types (measured on Node 20).
 */
export class PowerSpectrum {
  readonly size: number;
  /** size / 2 + 1 powers of the latest `measure` */
  readonly power: Float64Array;
  readonly #fft: FFT;
  readonly #input: Float64Array;
  readonly #complex: Float64Array;

  constructor(size: number) {
    if (size < 4 || (size & (size - 1)) !== 0)
      throw new UsageError(`size=${size} is no power of two from 4 up; round it up to one`);
    this.size = size;
    this.power = new Float64Array(size / 2 + 1);
    this.#fft = transformOf(size);
    this.#input = new Float64Array(size);
    this.#complex = new Float64Array(2 * size);
  }

  /**
   * `samples` × `window` (of one length, at most `size`; the rest is zero) → `power`, scaled so that a full-scale sine at
   * the middle of a bin reads 1 (0 dB).
   */
  measure(samples: Float64Array, window: Float64Array): Float64Array {
    if (samples.length < window.length || window.length > this.size)
      throw new UsageError(
        `window=${window.length} must fit samples=${samples.length} and size=${this.size}; shorten the window`,
      );
    const input = this.#input;
    let sum = 0;
    for (let i = 0; i < window.length; i++) {
      input[i] = samples[i]! * window[i]!;
      sum += window[i]!;
    }
    input.fill(0, window.length);
    this.#fft.realTransform(this.#complex, input);
    const complex = this.#complex;
    const scale = 4 / (sum * sum);
    const power = this.power;
    for (let i = 0; i < power.length; i++) {
      const re = complex[2 * i]!;
      const im = complex[2 * i + 1]!;
      power[i] = scale * (re * re + im * im);
    }
    return power;
  }
}
