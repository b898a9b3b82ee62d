import { PowerSpectrum } from '../../../base/fft.ts';
import type { Collection, Kernel, Multiplication, Smearing, Spectrum } from './types.ts';

/**
 * The kernel in plain typed arrays, for where WebAssembly is missing. `multiply` and `smear` give the same numbers to the last
 * bit; `spectrum` and `collect` reckon in float64, so that a feature may differ in its last bit.
 */
export function plainKernel(): Kernel {
  let views = viewsOf(new ArrayBuffer(0));
  const spectra = new Map<number, Float64Spectrum>();
  return {
    kind: 'plain',
    get memory() {
      return views.memory;
    },
    reserve(bytes) {
      const address = views.memory.byteLength;
      const grown = viewsOf(new ArrayBuffer(address + 16 * Math.ceil(bytes / 16)));
      grown.short.set(views.short);
      views = grown;
      return address;
    },
    multiply: (job, positions, input, output) => multiply(views, job, positions, input, output),
    smear: (job, positions, output) => smear(views, job, positions, output),
    spectrum(job, samples, output) {
      let own = spectra.get(job.window);
      if (!own) spectra.set(job.window, (own = new Float64Spectrum(views, job)));
      own.measure(views, samples, output);
    },
    collect: (job, power, gain, output) => collect(views, job, power, gain, output),
  };
}

interface Views {
  readonly memory: ArrayBuffer;
  readonly short: Int16Array;
  readonly long: Int32Array;
  readonly float: Float32Array;
}

function viewsOf(memory: ArrayBuffer): Views {
  return {
    memory,
    short: new Int16Array(memory),
    long: new Int32Array(memory),
    float: new Float32Array(memory),
  };
}

function rounded(sum: number, shift: number): number {
  return Math.min(Math.max(((sum + (1 << (shift - 1))) | 0) >> shift, -32768), 32767);
}

function multiply(views: Views, job: Multiplication, positions: number, input: number, output: number): void {
  const { short, long } = views;
  const { pairs, shift, mode } = job;
  const offsets = long.subarray(job.offsets >> 2, (job.offsets >> 2) + pairs);
  const put = (at: number, sum: number): void => {
    const value = rounded(sum, shift);
    const kept = mode > 0 ? Math.max(value, 0) : value;
    short[at] = mode > 1 ? Math.min(kept + short[at]!, 32767) : kept;
  };
  for (let first = 0; first < job.outputs; first += 4) {
    // Four of the eight outputs that stand together in the weights: four sums still fit the machine's registers.
    const weights = (job.weights >> 1) + (first >> 3) * pairs * 16 + (first & 4) * 2;
    for (let position = 0; position < positions; position++) {
      const from = (input + position * job.inputStride) >> 1;
      const bias = ((job.bias + position * job.biasStride) >> 2) + first;
      const shared = (job.shared >> 2) + first;
      let a = long[bias]! + long[shared]!;
      let b = long[bias + 1]! + long[shared + 1]!;
      let c = long[bias + 2]! + long[shared + 2]!;
      let d = long[bias + 3]! + long[shared + 3]!;
      for (let pair = 0; pair < pairs; pair++) {
        const at = from + (offsets[pair]! >> 1);
        const left = short[at]!;
        const right = short[at + 1]!;
        const weight = weights + 16 * pair;
        a = (a + Math.imul(short[weight]!, left) + Math.imul(short[weight + 1]!, right)) | 0;
        b = (b + Math.imul(short[weight + 2]!, left) + Math.imul(short[weight + 3]!, right)) | 0;
        c = (c + Math.imul(short[weight + 4]!, left) + Math.imul(short[weight + 5]!, right)) | 0;
        d = (d + Math.imul(short[weight + 6]!, left) + Math.imul(short[weight + 7]!, right)) | 0;
      }
      const to = ((output + position * job.outputStride) >> 1) + first;
      put(to, a);
      put(to + 1, b);
      put(to + 2, c);
      put(to + 3, d);
    }
  }
}

function smear({ short, long }: Views, job: Smearing, positions: number, output: number): void {
  const { channels, taps, shift } = job;
  const rows = long.subarray(job.rows >> 2, (job.rows >> 2) + taps);
  for (let position = 0; position < positions; position++) {
    for (let channel = 0; channel < channels; channel++) {
      const at = position * channels + channel;
      const weight = (job.weights >> 1) + (channel >> 3) * taps * 8 + (channel & 7) * 2;
      let sum = 0;
      for (let tap = 0; tap < taps; tap++) {
        const product = Math.imul(
          short[weight + (tap >> 1) * 16 + (tap & 1)]!,
          short[(rows[tap]! >> 1) + at]!,
        );
        sum = (sum + product) | 0;
      }
      short[((output + position * job.outputStride) >> 1) + channel] = rounded(sum, shift);
    }
  }
}

/** One window's spectrum, scaled as the window says. */
class Float64Spectrum {
  readonly #samples: Float64Array;
  readonly #window: Float64Array;
  readonly #spectrum: PowerSpectrum;
  readonly #scale: number;

  constructor({ float }: Views, job: Spectrum) {
    const at = job.window >> 2;
    this.#samples = new Float64Array(job.size);
    this.#window = Float64Array.from(float.subarray(at, at + job.size));
    this.#spectrum = new PowerSpectrum(job.size);
    const sum = this.#window.reduce((total, value) => total + value, 0);
    this.#scale = (sum * sum) / 4;
  }

  measure({ float }: Views, samples: number, output: number): void {
    this.#samples.set(float.subarray(samples >> 2, (samples >> 2) + this.#samples.length));
    const power = this.#spectrum.measure(this.#samples, this.#window);
    for (let bin = 0; bin < this.#samples.length / 2; bin++)
      float[(output >> 2) + bin] = this.#scale * power[bin]!;
  }
}

function collect(views: Views, job: Collection, power: number, gain: number, output: number): void {
  const { short, long, float } = views;
  let weight = job.weights >> 2;
  for (let bin = 0; bin < job.count; bin++) {
    const from = (power + long[(job.table >> 2) + 2 * bin]!) >> 2;
    const length = 4 * long[(job.table >> 2) + 2 * bin + 1]!;
    let sum = 0;
    for (let i = 0; i < length; i++) sum += float[weight + i]! * float[from + i]!;
    weight += length;
    const value = job.slope * Math.log2(sum * gain + job.floor) + job.rise;
    short[(output + bin * job.outputStride) >> 1] = Math.round(value);
  }
}
