import { createSums } from '../../sums/index.ts';
import type { Dots, Sums } from '../../sums/index.ts';

const BYTES = Float64Array.BYTES_PER_ELEMENT;

const opened = {
  wasm: new WeakMap<Float32Array, BandWeights>(),
  plain: new WeakMap<Float32Array, BandWeights>(),
};

/** The one that all listenings with the same weights share: memories of WebAssembly are few. */
export function bandWeights(weights: Float32Array, channels: number, kind: Sums['kind']): BandWeights {
  const known = opened[kind];
  const bands = known.get(weights) ?? new BandWeights(weights, channels, kind);
  known.set(weights, bands);
  return bands;
}

/** What the bands of a frame say to each channel, the same to every key. */
export class BandWeights {
  readonly #sums: Sums;
  readonly #job: Dots;
  readonly #means: Float64Array;
  readonly #weighed: Float64Array;
  readonly #whole: Int32Array;

  /** @param weights channels × bands */
  constructor(weights: Float32Array, channels: number, kind: Sums['kind']) {
    const sums = createSums(kind);
    const bands = weights.length / channels;
    const length = 4 * Math.ceil(bands / 4);
    const rows = sums.reserve(channels * length * BYTES);
    const means = sums.reserve(length * BYTES);
    const places = sums.reserve(2 * channels * Int32Array.BYTES_PER_ELEMENT);
    const output = sums.reserve(channels * BYTES);
    for (let channel = 0; channel < channels; channel++) {
      const row = rows + channel * length * BYTES;
      new Float64Array(sums.memory, row, bands).set(weights.subarray(channel * bands, (channel + 1) * bands));
      new Int32Array(sums.memory, places, 2 * channels).set([row, means], 2 * channel);
    }
    this.#sums = sums;
    this.#job = { places, length, output };
    this.#means = new Float64Array(sums.memory, means, bands);
    this.#weighed = new Float64Array(sums.memory, output, channels);
    this.#whole = new Int32Array(channels);
  }

  /** Means of the bands → whole numbers by channel, reused. */
  weigh(means: Float64Array): Int32Array {
    this.#means.set(means);
    this.#sums.dots(this.#job, this.#whole.length);
    for (let channel = 0; channel < this.#whole.length; channel++)
      this.#whole[channel] = Math.round(this.#weighed[channel]!);
    return this.#whole;
  }
}
