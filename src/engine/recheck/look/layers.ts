/** A dense layer: `outputs` × `inputs` weights, row by row, and a bias for each output. */
export interface Layer {
  readonly weights: Float32Array;
  readonly bias: Float32Array;
}

/** Inputs (from `from` on) → outputs of a dense layer into `out` (from `to` on), negative ones cut to 0 unless `linear`. */
function multiply(
  { weights, bias }: Layer,
  input: Float32Array,
  from: number,
  out: Float32Array,
  to: number,
  linear: boolean,
): void {
  const outputs = bias.length;
  const inputs = weights.length / outputs;
  for (let output = 0; output < outputs; output++) {
    const row = output * inputs;
    // Two sums side by side: neither need wait for the other.
    let even = bias[output]!;
    let odd = 0;
    let i = 0;
    for (; i + 1 < inputs; i += 2) {
      even += weights[row + i]! * input[from + i]!;
      odd += weights[row + i + 1]! * input[from + i + 1]!;
    }
    if (i < inputs) even += weights[row + i]! * input[from + i]!;
    const sum = even + odd;
    out[to + output] = linear || sum > 0 ? sum : 0;
  }
}

/** Inputs → outputs of a dense layer, negative ones cut to 0 unless `linear`. */
export function dense(layer: Layer, input: Float32Array, linear = false): Float32Array {
  const out = new Float32Array(layer.bias.length);
  multiply(layer, input, 0, out, 0, linear);
  return out;
}

/** A dense layer over each row of `rows` (row after row of `width` values) → the rows of its outputs. */
export function denseRows(layer: Layer, rows: Float32Array, width: number): Float32Array {
  const out = new Float32Array((rows.length / width) * layer.bias.length);
  for (let from = 0, to = 0; from < rows.length; from += width, to += layer.bias.length)
    multiply(layer, rows, from, out, to, false);
  return out;
}

/** Frames × channels → every second frame of three seen together; weights outputs × channels × 3, negative ones cut to 0. */
export function halveFrames({ weights, bias }: Layer, rows: Float32Array, channels: number): Float32Array {
  const frames = rows.length / channels;
  const kept = Math.floor((frames - 3) / 2) + 1;
  const out = new Float32Array(kept * bias.length);
  for (let frame = 0; frame < kept; frame++) {
    for (let output = 0; output < bias.length; output++) {
      let sum = bias[output]!;
      for (let channel = 0; channel < channels; channel++)
        for (let tap = 0; tap < 3; tap++)
          sum +=
            weights[(output * channels + channel) * 3 + tap]! * rows[(2 * frame + tap) * channels + channel]!;
      out[frame * bias.length + output] = Math.max(0, sum);
    }
  }
  return out;
}
