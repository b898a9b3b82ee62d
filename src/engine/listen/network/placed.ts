import type { Kernel, Multiplication, Smearing } from './kernel/index.ts';
import { BIN_BYTES } from './layers.ts';
import type { PackedLayer } from './layers.ts';
import { wholeNetwork } from './packed.ts';
import { OUTPUTS } from './parameters.ts';
import type { PackedNetwork } from './types.ts';

/** Bytes from one key to the next in each kind of row. */
export interface RowStrides {
  /** three log bins */
  readonly features: number;
  /** [key][channel] */
  readonly channels: number;
  /** [key][output rounded up to 8] */
  readonly outputs: number;
}

/** One block in a kernel's memory. */
export interface PlacedBlock {
  readonly dilation: number;
  readonly time: Smearing;
  readonly keys: Smearing;
  readonly mix: Multiplication;
}

/** A whole network in a kernel's memory. */
export interface PlacedNetwork {
  readonly strides: RowStrides;
  readonly stem: Multiplication;
  /** channels × (views × bands), in the stem's biases' unit for band means in the features' unit */
  readonly bands: Float32Array;
  readonly blocks: readonly PlacedBlock[];
  readonly out: Multiplication;
  /** where a block smeared over time lies: keys with silent ones on both sides */
  readonly timeRow: number;
  readonly timeRowBytes: number;
  readonly silentBytes: number;
  /** where a block smeared over keys lies */
  readonly keysRow: number;
}

type Wiring = Pick<Multiplication, 'inputStride' | 'outputStride' | 'biasStride' | 'shared' | 'mode'>;

/** Puts a trained network into the kernel's memory. */
export function placeNetwork(kernel: Kernel, packed: PackedNetwork): PlacedNetwork {
  const { shape } = packed;
  const { channels } = shape;
  const { stem, bands, blocks, out } = wholeNetwork(packed);
  const strides: RowStrides = {
    features: 3 * BIN_BYTES,
    channels: channels * 2,
    outputs: 8 * Math.ceil(OUTPUTS / 8) * 2,
  };
  const silentBytes = Math.max(...shape.keyOffsets.map(Math.abs)) * strides.channels;
  const timeRowBytes = shape.keys * strides.channels + 2 * silentBytes;
  const timeRow = kernel.reserve(timeRowBytes);
  const keysRow = kernel.reserve(shape.keys * strides.channels);

  const place = (layer: PackedLayer, wiring: Wiring): Multiplication => ({
    ...wiring,
    weights: copyInto(kernel, layer.weights),
    bias: copyInto(kernel, layer.bias),
    offsets: copyInto(kernel, layer.offsets),
    pairs: layer.offsets.length,
    outputs: layer.outputs,
    shift: layer.shift,
  });
  const placeTaps = (
    { weights, shift }: { weights: Int16Array; shift: number },
    rows: Int32Array,
  ): Smearing => ({
    rows: copyInto(kernel, rows),
    taps: rows.length,
    weights: copyInto(kernel, weights),
    outputStride: strides.channels,
    channels,
    shift,
  });
  const even = (count: number): number => 2 * Math.ceil(count / 2);
  const keyRows = new Int32Array(even(shape.keyOffsets.length)).fill(timeRow + silentBytes);
  shape.keyOffsets.forEach((offset, tap) => (keyRows[tap]! += offset * strides.channels));
  const sharedBytes = channels * Int32Array.BYTES_PER_ELEMENT;
  const dense: Wiring = {
    inputStride: strides.channels,
    outputStride: strides.channels,
    biasStride: 0,
    // Nothing is ever written there.
    shared: kernel.reserve(sharedBytes),
    mode: 2,
  };

  return {
    strides,
    stem: place(stem, {
      inputStride: strides.features,
      outputStride: strides.channels,
      biasStride: channels * Int32Array.BYTES_PER_ELEMENT,
      // What the bands of a frame say.
      shared: kernel.reserve(sharedBytes),
      mode: 1,
    }),
    bands,
    blocks: blocks.map(({ time, keys, mix }, index) => ({
      dilation: shape.dilations[index]!,
      time: placeTaps(time, new Int32Array(even(shape.steps.length))),
      keys: placeTaps(keys, keyRows),
      mix: place(mix, dense),
    })),
    out: place(out, { ...dense, outputStride: strides.outputs, mode: 0 }),
    timeRow,
    timeRowBytes,
    silentBytes,
    keysRow,
  };
}

function copyInto(kernel: Kernel, data: Int16Array | Int32Array): number {
  const address = kernel.reserve(data.byteLength);
  if (data instanceof Int16Array) new Int16Array(kernel.memory, address).set(data);
  else new Int32Array(kernel.memory, address).set(data);
  return address;
}
