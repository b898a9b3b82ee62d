import { UsageError } from '../../base/errors.ts';
import { A4_HZ } from '../../base/units.ts';
import type { NetworkShape } from './types.ts';

/** log bins above this share of the Nyquist frequency stay empty */
const HIGHEST_SHARE = 0.98;

/** Log bins of one spectrum: each the weighted mean of neighbouring powers. */
export interface LogBins {
  /** first bin of the spectrum for each log bin */
  readonly first: Int32Array;
  /** where each log bin's weights begin, and, last, where they end */
  readonly starts: Int32Array;
  readonly weights: Float64Array;
}

/** How far a piano's tuning may lie from A4 = 440 Hz: keys that the network does not know are heard by transposing. */
const MOST_CENTS = 600;

function centreHzOf(shape: NetworkShape, bin: number, cents: number): number {
  const octaves = (shape.lowestMidi - 69) / 12 + (bin - shape.binsBelow) / shape.binsPerOctave + cents / 1200;
  return A4_HZ * 2 ** octaves;
}

/** Half a triangle's base: a third of a semitone, or one bin of the spectrum where that is more. */
function halfHzOf(shape: NetworkShape, centreHz: number, binHz: number): number {
  return Math.max(centreHz * (2 ** (1 / shape.binsPerOctave) - 1), binHz);
}

/** Whole fours of weights that suffice for all log bins of one spectrum at any tuning. */
export function mostFours(shape: NetworkShape, size: number): number {
  const binHz = shape.rateHz / size;
  let fours = 0;
  for (let bin = 0; bin < shape.bins; bin++) {
    const halfHz = halfHzOf(shape, centreHzOf(shape, bin, MOST_CENTS), binHz);
    fours += Math.ceil(((2 * halfHz) / binHz + 1) / 4);
  }
  return fours;
}

/**
 * Triangles about each log bin's frequency on the piano's own tuning, their weights summing to 1 (src/training/listener/features.py, `fbank`).
 */
export function logBins(shape: NetworkShape, size: number, cents: number): LogBins {
  if (!(Math.abs(cents) <= MOST_CENTS))
    throw new UsageError(`cents=${cents} is outside ±${MOST_CENTS}; name the tuning by a nearer key`);
  const count = shape.bins;
  const binHz = shape.rateHz / size;
  const first = new Int32Array(count);
  const starts = new Int32Array(count + 1);
  const weights: number[] = [];
  for (let i = 0; i < count; i++) {
    const centreHz = centreHzOf(shape, i, cents);
    const halfHz = halfHzOf(shape, centreHz, binHz);
    starts[i] = weights.length;
    first[i] = Math.floor((centreHz - halfHz) / binHz) + 1;
    if (centreHz > (shape.rateHz / 2) * HIGHEST_SHARE) continue;
    const own: number[] = [];
    for (let bin = first[i]!; bin < size / 2; bin++) {
      const weight = 1 - Math.abs(bin * binHz - centreHz) / halfHz;
      if (weight <= 0) break;
      own.push(weight);
    }
    const sum = own.reduce((total, weight) => total + weight, 0);
    for (const weight of own) weights.push(weight / sum);
  }
  starts[count] = weights.length;
  return { first, starts, weights: Float64Array.from(weights) };
}
