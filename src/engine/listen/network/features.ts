import { hann } from '../../base/windows.ts';
import { placeSpectrum } from './kernel/index.ts';
import type { Collection, Kernel, Spectrum } from './kernel/index.ts';
import { BIN_BYTES, BITS, viewLength, viewPlaces } from './layers.ts';
import { logBins, mostFours } from './log-bins.ts';
import type { NetworkShape, SampleSource } from './types.ts';

/** powers below −90 dB count as silence */
const FLOOR = 1e-9;
/** the network sees features about 0: −90 dB is −3, a full-scale sine 1.5 */
const MIDDLE = 1.5;
/** samples that are held besides those of one frame, so that most frames only fetch what is new */
const HELD_AHEAD = 8192;

/** One length of spectrum and how it is gathered into log bins. */
interface Lens {
  readonly spectrum: Spectrum;
  readonly collection: Collection;
}

/**
 * Samples → what the network sees of one frame: for each view and log bin (log10(power · gain² + 10⁻⁹) + 3) / 2, as whole
 * numbers of `BITS.features` in the kernel's memory (`viewPlaces`), and the mean of each band.
 */
export class FeatureMaker {
  readonly #kernel: Kernel;
  readonly #shape: NetworkShape;
  readonly #lenses: ReadonlyMap<number, Lens>;
  readonly #power: number;
  readonly #output: number;
  /** where each view's values lie, [bin][2] */
  readonly #rows: readonly { readonly at: number; readonly copied: boolean }[];
  /** samples before and after a frame's centre */
  readonly #before: number;
  readonly #after: number;
  readonly #samples: number;
  readonly #heldLength: number;
  readonly #fetched: Float64Array;
  readonly #means: Float64Array;
  #cents: number | undefined;
  #source: SampleSource | undefined;
  /** absolute index of the first sample held, and of the one after the last */
  #from = 0;
  #to = 0;

  constructor(kernel: Kernel, shape: NetworkShape) {
    const { views } = shape;
    this.#kernel = kernel;
    this.#shape = shape;
    this.#before = Math.max(...views.map(({ size, momentSamples }) => size / 2 - momentSamples));
    this.#after = Math.max(...views.map(({ size, momentSamples }) => size / 2 + momentSamples));
    this.#heldLength = this.#before + this.#after + HELD_AHEAD;
    this.#samples = kernel.reserve(4 * this.#heldLength);
    this.#fetched = new Float64Array(this.#before + this.#after);
    this.#power = kernel.reserve(4 * (Math.max(...views.map(({ size }) => size)) / 2 + 4));
    const places = viewPlaces(shape);
    this.#output = kernel.reserve(
      BIN_BYTES * viewLength(shape) * places.filter((place) => place !== null).length,
    );
    this.#rows = places.map((place, view) => ({
      at: this.#output + (place?.at ?? places[view - 1]!.at + BIN_BYTES / 2),
      copied: place?.pairs === 'next bin',
    }));
    this.#means = new Float64Array(views.length * shape.bands);
    this.#lenses = new Map(
      [...new Set(views.map(({ size }) => size))].map((size) => [
        size,
        {
          spectrum: placeSpectrum(kernel, size, windowOf(size)),
          collection: placeCollection(kernel, shape, size),
        },
      ]),
    );
  }

  /** Where the latest frame's features lie. */
  get row(): number {
    return this.#output;
  }

  /** From here on: this sound, on this tuning. */
  listenTo(source: SampleSource, cents: number): void {
    if (this.#cents !== cents)
      this.#lenses.forEach(({ collection }, size) =>
        fillCollection(this.#kernel, this.#shape, size, cents, collection),
      );
    if (this.#source !== source) this.#to = this.#from = 0;
    this.#cents = cents;
    this.#source = source;
  }

  /** Makes the features of a frame; returns its band means, [view][band], reused. */
  make(frame: number, gain: number): Float64Array {
    const { hop, views } = this.#shape;
    const centre = frame * hop;
    this.#hold(centre - this.#before, centre + this.#after);
    views.forEach(({ size, momentSamples }, view) => {
      const { spectrum, collection } = this.#lenses.get(size)!;
      const first = centre + momentSamples - size / 2;
      this.#kernel.spectrum(spectrum, this.#samples + 4 * (first - this.#from), this.#power);
      const { at, copied } = this.#rows[view]!;
      this.#kernel.collect(collection, this.#power, gain * gain, at);
      this.#meanBands(at, copied, view);
    });
    return this.#means;
  }

  /** … and writes each bin beside the one before where no other view stands there. */
  #meanBands(at: number, copied: boolean, view: number): void {
    const { bins, bands } = this.#shape;
    const values = new Int16Array(this.#kernel.memory, at, 2 * bins);
    for (let band = 0; band < bands; band++) {
      const from = Math.floor((band * bins) / bands);
      const to = Math.floor(((band + 1) * bins) / bands);
      let sum = 0;
      for (let bin = from; bin < to; bin++) sum += values[2 * bin]!;
      this.#means[view * bands + band] = sum / (to - from);
    }
    if (copied) for (let bin = 1; bin < bins; bin++) values[2 * bin - 1] = values[2 * bin]!;
  }

  /** Sees to it that the samples from `first` to before `end` are held. */
  #hold(first: number, end: number): void {
    const held = new Float32Array(this.#kernel.memory, this.#samples, this.#heldLength);
    const goesOn = first >= this.#from && first <= this.#to;
    if (!goesOn) this.#from = this.#to = first;
    if (end - this.#from > held.length) {
      held.copyWithin(0, first - this.#from, this.#to - this.#from);
      this.#from = first;
    }
    const missing = end - this.#to;
    if (missing <= 0) return;
    this.#source!.read(this.#to, this.#fetched, missing);
    held.set(this.#fetched.subarray(0, missing), this.#to - this.#from);
    this.#to = end;
  }
}

/** A full-scale sine reads 1. */
function windowOf(size: number): Float64Array {
  return hann(size).map((value) => value / (size / 4));
}

function placeCollection(kernel: Kernel, shape: NetworkShape, size: number): Collection {
  return {
    table: kernel.reserve(8 * viewLength(shape)),
    weights: kernel.reserve(16 * mostFours(shape, size)),
    count: viewLength(shape),
    floor: FLOOR,
    slope: 2 ** BITS.features / 2 / Math.log2(10),
    rise: (3 - MIDDLE) * 2 ** BITS.features,
    outputStride: BIN_BYTES,
  };
}

function fillCollection(
  kernel: Kernel,
  shape: NetworkShape,
  size: number,
  cents: number,
  job: Collection,
): void {
  const { first, starts, weights } = logBins(shape, size, cents);
  const table = new Int32Array(kernel.memory, job.table, 2 * job.count).fill(0);
  const placed = new Float32Array(kernel.memory, job.weights, 4 * mostFours(shape, size)).fill(0);
  let at = 0;
  for (let bin = 0; bin < first.length; bin++) {
    const own = weights.subarray(starts[bin], starts[bin + 1]);
    const fours = Math.ceil(own.length / 4);
    table[2 * bin] = 4 * first[bin]!;
    table[2 * bin + 1] = fours;
    placed.set(own, at);
    at += 4 * fours;
  }
}
