import { createSums } from '../../sums/index.ts';
import type { Sums } from '../../sums/index.ts';

/** A dense layer, placed: weights output by output, and a bias for each. */
export interface Layer {
  readonly desk: LayerDesk;
  readonly weights: number;
  readonly bias: number;
  readonly inputs: number;
  readonly outputs: number;
}

const BYTES = Float32Array.BYTES_PER_ELEMENT;
const inFours = (count: number): number => 4 * Math.ceil(count / 4);

/** The layers of a network in one memory, with room for what goes in and what comes out. */
export class LayerDesk {
  readonly #sums: Sums;
  readonly #input: number;
  readonly #output: number;

  /** @param most numbers that go into a layer or come out of it, over all rows, at most */
  constructor(most: number, kind: Sums['kind'] = 'wasm') {
    this.#sums = createSums(kind);
    this.#input = this.#sums.reserve(inFours(most) * BYTES);
    this.#output = this.#sums.reserve(inFours(most) * BYTES);
  }

  /** `weights`: outputs × inputs, row by row. */
  place(weights: Float32Array, bias: Float32Array): Layer {
    const outputs = bias.length;
    const inputs = weights.length / outputs;
    const width = inFours(inputs);
    const at = this.#sums.reserve(inFours(outputs) * width * BYTES);
    const biasAt = this.#sums.reserve(inFours(outputs) * BYTES);
    const placed = this.#values(at, outputs * width);
    if (width === inputs) placed.set(weights);
    else
      for (let output = 0; output < outputs; output++)
        placed.set(weights.subarray(output * inputs, (output + 1) * inputs), output * width);
    this.#values(biasAt, outputs).set(bias);
    return { desk: this, weights: at, bias: biasAt, inputs, outputs };
  }

  /** Rows of the layer's inputs, each `stride` numbers after the one before, as many as fit → the rows of its outputs. */
  run(layer: Layer, values: Float32Array, stride: number, linear: boolean): Float32Array {
    const { weights, bias, inputs, outputs } = layer;
    const rows = Math.floor((values.length - inputs) / stride) + 1;
    const [width, wide] = [inFours(inputs), inFours(outputs)];
    const input = this.#values(this.#input, values.length + width - inputs);
    input.set(values);
    // A last row that is filled up to fours must not read what went in before.
    input.fill(0, values.length);
    const job = {
      weights,
      bias,
      inputs: width,
      outputs: wide,
      input: this.#input,
      inputStride: stride * BYTES,
      output: this.#output,
      outputStride: outputs * BYTES,
      least: linear ? -Infinity : 0,
    };
    this.#sums.dense(job, rows);
    return this.#values(this.#output, rows * outputs).slice();
  }

  #values(address: number, count: number): Float32Array {
    return new Float32Array(this.#sums.memory, address, count);
  }
}

/** Inputs → outputs of a dense layer, negative ones cut to 0 unless `linear`. */
export function dense(layer: Layer, input: Float32Array, linear = false): Float32Array {
  return layer.desk.run(layer, input, layer.inputs, linear);
}

/** A dense layer over each row of `rows` → the rows of its outputs, negative ones cut to 0. */
export function denseRows(layer: Layer, rows: Float32Array): Float32Array {
  return layer.desk.run(layer, rows, layer.inputs, false);
}

/** Frames × channels → every second frame of three seen together; the layer's inputs are 3 × channels. */
export function halveFrames(layer: Layer, rows: Float32Array, channels: number): Float32Array {
  return layer.desk.run(layer, rows, 2 * channels, false);
}

/** Weights outputs × channels × 3, as trained → outputs × 3 × channels, as three frames lie. */
export function framesFirst(weights: Float32Array, channels: number): Float32Array {
  const taps = 3;
  return weights.map((_, at) => {
    const [tap, channel] = [Math.floor(at / channels) % taps, at % channels];
    return weights[at - (at % (taps * channels)) + channel * taps + tap]!;
  });
}
