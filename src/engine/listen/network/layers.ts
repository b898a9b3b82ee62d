import type { Parameters } from './parameters.ts';
import type { NetworkShape } from './types.ts';

/**
 * Bits after the point of the int16 values of each kind of row. The largest values seen over the bundled attempts: features 3 of
 * ±8, channels 42 of ±64; in the five blocks smeared over time 0.8, 2, 5, 9, 21 of ±4, 8, 16, 32, 32, and over keys 0.7, 1.8, 2.3,
 * 6, 8 of ±4, 8, 8, 16, 16. The first blocks have smaller values and larger weights: with the bits of the last one, probabilities
 * of the whole network were off by up to 0.031.
 */
export const BITS = {
  features: 12,
  channels: 9,
  time: [13, 12, 11, 10, 10],
  keys: [13, 12, 12, 11, 11],
  outputs: 10,
} as const;
/** bits of a weight; sums of products must stay below 2³¹ */
const MOST_WEIGHT_BITS = 14;
/** of an int16 */
const BYTES = 2;

/** One multiplication in whole numbers, not yet placed in a memory. */
export interface PackedLayer {
  /** int16: [output / 8][pair][8 outputs][2] */
  readonly weights: Int16Array;
  /** int32: [position or 1][output rounded up to 8] */
  readonly bias: Int32Array;
  /** int32: bytes from a position to each pair of inputs */
  readonly offsets: Int32Array;
  /** outputs rounded up to 8 */
  readonly outputs: number;
  readonly shift: number;
  /** bits after the point of the biases, as of the sums of products */
  readonly biasBits: number;
}

/** Log bins in one view's row of features, rounded up to fours. */
export function viewLength(shape: NetworkShape): number {
  return 4 * Math.ceil(shape.bins / 4);
}

/** Bytes from one log bin to the next: two values are multiplied at once, so two stand side by side. */
export const BIN_BYTES = 2 * BYTES;

/** Where a view's log bins stand in a row of features. */
export interface ViewPlace {
  /** bytes from the row's beginning */
  readonly at: number;
  /** beside each bin stands the view that follows, of which a key looks at the same bins; else the next bin of the same view */
  readonly pairs: 'next view' | 'next bin';
}

/** Places of all views; of two that stand side by side the second one's is null, since the first says it. */
export function viewPlaces({ views, ...shape }: NetworkShape): readonly (ViewPlace | null)[] {
  const places: (ViewPlace | null)[] = [];
  const length = viewLength({ views, ...shape }) * BIN_BYTES;
  for (let rows = 0; places.length < views.length; rows++) {
    const [own, next] = [views[places.length]!, views[places.length + 1]];
    const alike = next !== undefined && own.bins.join() === next.bins.join();
    places.push({ at: rows * length, pairs: alike ? 'next view' : 'next bin' });
    if (alike) places.push(null);
  }
  return places;
}

/** Each key from the log bins it looks at, all views in one row; a bin whose neighbour is not wanted brings it along with weight 0. */
export function packStem(parameters: Parameters, shape: NetworkShape): PackedLayer {
  const pairs: { readonly offset: number; readonly inputs: readonly [number, number | null] }[] = [];
  let input = 0;
  viewPlaces(shape).forEach((place, view) => {
    if (place === null) return;
    const { bins } = shape.views[view]!;
    const first = input;
    const offset = (bin: number): number => place.at + (shape.binsBelow + bin) * BIN_BYTES;
    if (place.pairs === 'next view') {
      bins.forEach((bin, i) =>
        pairs.push({ offset: offset(bin), inputs: [first + i, first + bins.length + i] }),
      );
      input += 2 * bins.length;
      return;
    }
    const inputOf = new Map(bins.map((bin) => [bin, input++]));
    const inOrder = [...bins].sort((a, b) => a - b);
    for (let i = 0; i < inOrder.length; i++) {
      const bin = inOrder[i]!;
      const joined = inOrder[i + 1] === bin + 1;
      pairs.push({
        offset: offset(bin),
        inputs: [inputOf.get(bin)!, joined ? inputOf.get(bin + 1)! : null],
      });
      if (joined) i += 1;
    }
  });
  const inputs = input;
  return packLayer(
    parameters.stemBias,
    shape.channels,
    pairs.map(({ offset }) => offset),
    BITS.features,
    BITS.channels,
    (output, pair, side) => {
      const from = pairs[pair]!.inputs[side];
      return from === null ? 0 : parameters.stem[output * inputs + from]!;
    },
  );
}

/** Each key from its own channels alone: `weights` rows are outputs; bits of the inputs and of the outputs. */
export function packDense(
  weights: Float32Array,
  bias: Float32Array,
  fromBits: number,
  toBits: number,
): PackedLayer {
  const inputs = weights.length / bias.length;
  const offsets = Array.from({ length: inputs / 2 }, (_, pair) => 2 * pair * BYTES);
  return packLayer(
    bias,
    bias.length,
    offsets,
    fromBits,
    toBits,
    (output, pair, side) => weights[output * inputs + 2 * pair + side]!,
  );
}

/** Channels × taps → int16 [channel / 8][pair of taps][8 channels][2], and the shift. An odd tap is paired with 0. */
export function packTaps(
  weights: Float32Array,
  taps: number,
  fromBits: number,
  toBits: number,
): { readonly weights: Int16Array; readonly shift: number } {
  const channels = weights.length / taps;
  const even = 2 * Math.ceil(taps / 2);
  const bits = weightBits(weights);
  const packed = new Int16Array(channels * even);
  for (let channel = 0; channel < channels; channel++) {
    for (let tap = 0; tap < taps; tap++) {
      const at = (channel >> 3) * even * 8 + (tap >> 1) * 16 + (channel & 7) * 2 + (tap & 1);
      packed[at] = Math.round(weights[channel * taps + tap]! * 2 ** bits);
    }
  }
  return { weights: packed, shift: bits + fromBits - toBits };
}

function packLayer(
  bias: Float32Array,
  outputs: number,
  offsets: readonly number[],
  fromBits: number,
  toBits: number,
  weightOf: (output: number, pair: number, side: 0 | 1) => number,
): PackedLayer {
  const pairs = offsets.length;
  const wide = 8 * Math.ceil(outputs / 8);
  const exact = new Float32Array(wide * pairs * 2);
  for (let output = 0; output < outputs; output++) {
    for (let pair = 0; pair < pairs; pair++) {
      const at = ((output >> 3) * pairs + pair) * 16 + (output & 7) * 2;
      exact[at] = weightOf(output, pair, 0);
      exact[at + 1] = weightOf(output, pair, 1);
    }
  }
  const bits = weightBits(exact);
  const positions = bias.length / outputs;
  const biases = new Int32Array(positions * wide);
  for (let position = 0; position < positions; position++) {
    for (let output = 0; output < outputs; output++)
      biases[position * wide + output] = Math.round(
        bias[position * outputs + output]! * 2 ** (bits + fromBits),
      );
  }
  const scale = 2 ** bits;
  const weights = new Int16Array(exact.length);
  for (let i = 0; i < exact.length; i++) weights[i] = Math.round(exact[i]! * scale);
  return {
    weights,
    bias: biases,
    offsets: Int32Array.from(offsets),
    outputs: wide,
    shift: bits + fromBits - toBits,
    biasBits: bits + fromBits,
  };
}

/** Bits after the point with which the largest of these still fits an int16. */
function weightBits(weights: Float32Array): number {
  let largest = 1e-9;
  for (let i = 0; i < weights.length; i++) largest = Math.max(largest, Math.abs(weights[i]!));
  return Math.min(Math.floor(Math.log2(32767 / largest)), MOST_WEIGHT_BITS);
}
