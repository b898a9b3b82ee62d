import { UsageError } from '../../base/errors.ts';
import { FeatureMaker } from './features.ts';
import { openKernel } from './kernel/index.ts';
import type { Kernel, Multiplication } from './kernel/index.ts';
import { bandWeights } from './bands.ts';
import type { BandWeights } from './bands.ts';
import { BITS } from './layers.ts';
import { reachOf } from './parameters.ts';
import { placeNetwork } from './placed.ts';
import type { PlacedNetwork } from './placed.ts';
import type { NetworkShape, PackedNetwork, SampleSource } from './types.ts';

/** What is being listened to. Whatever changes here makes all earlier frames void. */
export interface Sound {
  readonly source: SampleSource;
  /** the piano's own tuning against A4 = 440 Hz */
  readonly cents: number;
  /** by what the samples are multiplied: brings the playing to an active RMS of 0.1 */
  readonly gain: number;
  /** keys that are asked about, widened to multiples of four; keys outside count as silent */
  readonly lowMidi: number;
  readonly highMidi: number;
}

/** Rows of one layer by frame, the latest of them kept in a ring. */
interface Rows {
  readonly address: number;
  readonly rowBytes: number;
  /** which frame lies in each place */
  readonly frames: Float64Array;
}

/** An output of 1 as the whole number that it is kept as. */
const OUTPUT_UNIT = 2 ** BITS.outputs;

/** What no frame is. */
const NO_FRAME = -(2 ** 53);

/**
 * The network over one sound, evaluated lazily: asked for a frame, it computes of each layer the rows that this frame needs
 * and that it does not have yet. What it says depends on `Sound` and on the samples within reach of the frame (`reachOf`),
 * never on what was asked before: whole-number arithmetic makes that true to the last bit.
 */
export class Network {
  readonly shape: NetworkShape;
  /** products of a weight and a value so far, for benches */
  products = 0;
  readonly #kernel: Kernel;
  readonly #placed: PlacedNetwork;
  readonly #maker: FeatureMaker;
  /** what enters the first block, then what leaves each block */
  readonly #layers: readonly Rows[];
  readonly #outputs: Rows;
  readonly #bytes: Uint8Array;
  readonly #short: Int16Array;
  readonly #long: Int32Array;
  readonly #bands: BandWeights;
  /** with the biases of the keys that are asked about */
  #stem: Multiplication;
  #sound: Sound | undefined;
  #firstKey = 0;
  #keys = 0;

  constructor(packed: PackedNetwork, kind: Kernel['kind'] = 'wasm') {
    const { shape } = packed;
    const kernel = openKernel(kind);
    this.shape = shape;
    this.#kernel = kernel;
    this.#placed = placeNetwork(kernel, packed);
    this.#stem = this.#placed.stem;
    this.#maker = new FeatureMaker(kernel, shape);
    const { framesBack, framesAhead } = reachOf(shape);
    const kept = 2 ** Math.ceil(Math.log2(framesBack + framesAhead + 1));
    const rows = (rowBytes: number): Rows => ({
      address: kernel.reserve(kept * rowBytes),
      rowBytes,
      frames: new Float64Array(kept).fill(NO_FRAME),
    });
    const { channels, outputs } = this.#placed.strides;
    this.#layers = [0, ...shape.dilations].map(() => rows(shape.keys * channels));
    this.#outputs = rows(shape.keys * outputs);
    this.#bytes = new Uint8Array(kernel.memory);
    this.#short = new Int16Array(kernel.memory);
    this.#long = new Int32Array(kernel.memory);
    this.#bands = bandWeights(this.#placed.bands, shape.channels, kernel.kind);
  }

  get kernelKind(): Kernel['kind'] {
    return this.#kernel.kind;
  }

  /** From here on, frames are those of this sound. */
  listenTo(sound: Sound): void {
    const { lowestMidi, keys } = this.shape;
    const now = this.#sound;
    if (
      now?.source === sound.source &&
      now.cents === sound.cents &&
      now.gain === sound.gain &&
      now.lowMidi === sound.lowMidi &&
      now.highMidi === sound.highMidi
    )
      return;
    const low = Math.max(4 * Math.floor((sound.lowMidi - lowestMidi) / 4), 0);
    const high = Math.min(4 * Math.ceil((sound.highMidi + 1 - lowestMidi) / 4), keys);
    if (!(low < high))
      throw new UsageError(
        `lowMidi=${sound.lowMidi} to highMidi=${sound.highMidi} holds no key of ${lowestMidi}..${lowestMidi + keys - 1}`,
      );
    this.#maker.listenTo(sound.source, sound.cents);
    this.#sound = sound;
    this.#firstKey = low;
    const { stem } = this.#placed;
    this.#stem = { ...stem, bias: stem.bias + low * stem.biasStride };
    this.#keys = high - low;
    for (const { frames } of [...this.#layers, this.#outputs]) frames.fill(NO_FRAME);
    const { timeRow, timeRowBytes } = this.#placed;
    this.#bytes.fill(0, timeRow, timeRow + timeRowBytes);
  }

  /** What is said of `midi` in `frame`: 0 onset (logit), 1 onset's offset (frames), 2 level (6 dB), 3 sounding (logit). */
  output(frame: number, midi: number, which: 0 | 1 | 2 | 3): number {
    const key = midi - this.shape.lowestMidi - this.#firstKey;
    const at = this.#outputRow(frame) + key * this.#placed.strides.outputs;
    return this.#short[at / 2 + which]! / OUTPUT_UNIT;
  }

  /** Keys of which it is said in `frame` that the logit of their onset is over `leastLogit`, from low to high. */
  keysOver(frame: number, leastLogit: number): readonly number[] {
    const fromMidi = this.shape.lowestMidi + this.#firstKey;
    const width = this.#placed.strides.outputs / 2;
    const least = leastLogit * OUTPUT_UNIT;
    const keys: number[] = [];
    let at = this.#outputRow(frame) / 2;
    for (let midi = fromMidi; midi < fromMidi + this.#keys; midi++, at += width)
      if (this.#short[at]! > least) keys.push(midi);
    return keys;
  }

  #outputRow(frame: number): number {
    const address = addressOf(this.#outputs, frame);
    if (isNew(this.#outputs, frame))
      this.#multiply(this.#placed.out, this.#row(this.#layers.length - 1, frame), address);
    return address;
  }

  /** Address of a layer's row, computed if it is not there. */
  #row(layer: number, frame: number): number {
    const rows = this.#layers[layer]!;
    const address = addressOf(rows, frame);
    if (!isNew(rows, frame)) return address;
    if (layer === 0) this.#enter(frame, address);
    else this.#pass(layer, frame, address);
    return address;
  }

  #enter(frame: number, address: number): void {
    const { stem, strides } = this.#placed;
    const shared = this.#bands.weigh(this.#maker.make(frame, this.#sound!.gain));
    this.#long.set(shared, stem.shared / Int32Array.BYTES_PER_ELEMENT);
    this.#multiply(this.#stem, this.#maker.row + this.#firstKey * strides.features, address);
  }

  #pass(layer: number, frame: number, address: number): void {
    const { timeRow, silentBytes, keysRow, strides, blocks } = this.#placed;
    const { channels, steps, keyOffsets } = this.shape;
    const block = blocks[layer - 1]!;
    let now = 0;
    for (let tap = 0; tap < steps.length; tap++) {
      const row = this.#row(layer - 1, frame + steps[tap]! * block.dilation);
      this.#long[block.time.rows / 4 + tap] = row;
      if (steps[tap] === 0) now = row;
    }
    this.#kernel.smear(block.time, this.#keys, timeRow + silentBytes);
    this.#kernel.smear(block.keys, this.#keys, keysRow);
    this.products += this.#keys * channels * (steps.length + keyOffsets.length);
    this.#bytes.copyWithin(address, now, now + this.#keys * strides.channels);
    this.#multiply(block.mix, keysRow, address);
  }

  #multiply(job: Multiplication, input: number, output: number): void {
    this.#kernel.multiply(job, this.#keys, input, output);
    this.products += this.#keys * 2 * job.pairs * job.outputs;
  }
}

/** Where a frame's row lies: as many are kept as a power of two. */
function addressOf({ address, rowBytes, frames }: Rows, frame: number): number {
  return address + (frame & (frames.length - 1)) * rowBytes;
}

/** Whether a frame's row must be computed first; from then on it counts as being there. */
function isNew({ frames }: Rows, frame: number): boolean {
  const place = frame & (frames.length - 1);
  if (frames[place] === frame) return false;
  frames[place] = frame;
  return true;
}
