import { UsageError } from '../../base/errors.ts';
import { decodeBase64 } from '../../base/base64.ts';
import { decodeFloat16 } from './bytes.ts';
import type { NetworkShape, PackedNetwork } from './types.ts';

/** One block: smeared over time, then over keys, each channel for itself; then all channels mixed. Rows are outputs. */
export interface BlockParameters {
  /** channels × steps; absolute sums 1 */
  readonly time: Float32Array;
  /** channels × keyOffsets; absolute sums 1 */
  readonly keys: Float32Array;
  /** channels × channels */
  readonly mix: Float32Array;
  readonly mixBias: Float32Array;
}

export interface Parameters {
  /** channels × (bins of all views) */
  readonly stem: Float32Array;
  /** channels × (views × bands) */
  readonly bands: Float32Array;
  /** keys × channels: a key hears itself as the register it lies in */
  readonly stemBias: Float32Array;
  readonly blocks: readonly BlockParameters[];
  /** OUTPUTS × channels */
  readonly out: Float32Array;
  readonly outBias: Float32Array;
}

/** What the network says of each key and frame: onset (logit), onset's offset in frames, level, sounding (logit). */
export const OUTPUTS = 4;

/** A trained network as it lies in the repository → its weights. Throws when shape and data do not fit. */
export function unpackParameters({ shape, float16Base64 }: PackedNetwork): Parameters {
  const { channels, keys, views } = shape;
  if (keys % 4 !== 0 || channels % 8 !== 0)
    throw new UsageError(
      `keys=${keys}, channels=${channels} must be multiples of 4 and 8; train such a shape`,
    );
  const all = decodeFloat16(decodeBase64(float16Base64));
  let at = 0;
  const take = (count: number): Float32Array => all.subarray(at, (at += count));
  const parameters: Parameters = {
    stem: take(channels * views.reduce((sum, { bins }) => sum + bins.length, 0)),
    bands: take(channels * views.length * shape.bands),
    stemBias: take(keys * channels),
    blocks: shape.dilations.map(() => ({
      time: take(channels * shape.steps.length),
      keys: take(channels * shape.keyOffsets.length),
      mix: take(channels * channels),
      mixBias: take(channels),
    })),
    out: take(OUTPUTS * channels),
    outBias: take(OUTPUTS),
  };
  if (at !== all.length)
    throw new UsageError(
      `float16Base64 holds ${all.length} weights where the shape asks for ${at}; export it anew`,
    );
  return parameters;
}

/** How far the network looks from the frame it speaks of. */
export interface Reach {
  readonly framesBack: number;
  readonly framesAhead: number;
  readonly samplesBack: number;
  readonly samplesAhead: number;
}

export function reachOf({ steps, dilations, views, hop }: NetworkShape): Reach {
  const dilated = dilations.reduce((sum, dilation) => sum + dilation, 0);
  const framesBack = -Math.min(...steps) * dilated;
  const framesAhead = Math.max(...steps) * dilated;
  return {
    framesBack,
    framesAhead,
    samplesBack:
      framesBack * hop + Math.max(...views.map(({ size, momentSamples }) => size / 2 - momentSamples)),
    samplesAhead:
      framesAhead * hop + Math.max(...views.map(({ size, momentSamples }) => size / 2 + momentSamples)),
  };
}
