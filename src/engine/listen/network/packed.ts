import { BITS, packDense, packStem, packTaps } from './layers.ts';
import type { PackedLayer } from './layers.ts';
import { unpackParameters } from './parameters.ts';
import type { PackedNetwork } from './types.ts';

type PackedTaps = ReturnType<typeof packTaps>;

/** A trained network in whole numbers, not yet placed in a memory. */
export interface WholeNetwork {
  readonly stem: PackedLayer;
  /** channels × (views × bands), in the stem's biases' unit for band means in the features' unit */
  readonly bands: Float32Array;
  readonly blocks: readonly {
    readonly time: PackedTaps;
    readonly keys: PackedTaps;
    readonly mix: PackedLayer;
  }[];
  readonly out: PackedLayer;
}

const known = new WeakMap<PackedNetwork, WholeNetwork>();

/** As it lies in the repository → in whole numbers; done once, since each listening places the same anew. */
export function wholeNetwork(packed: PackedNetwork): WholeNetwork {
  const network = known.get(packed) ?? pack(packed);
  known.set(packed, network);
  return network;
}

function pack(packed: PackedNetwork): WholeNetwork {
  const { shape } = packed;
  const parameters = unpackParameters(packed);
  const stem = packStem(parameters, shape);
  return {
    stem,
    bands: parameters.bands.map((weight) => weight * 2 ** (stem.biasBits - BITS.features)),
    blocks: parameters.blocks.map(({ time, keys, mix, mixBias }, block) => {
      const [timeBits, keysBits] = [BITS.time[block]!, BITS.keys[block]!];
      return {
        time: packTaps(time, shape.steps.length, BITS.channels, timeBits),
        keys: packTaps(keys, shape.keyOffsets.length, timeBits, keysBits),
        mix: packDense(mix, mixBias, keysBits, BITS.channels),
      };
    }),
    out: packDense(parameters.out, parameters.outBias, BITS.channels, BITS.outputs),
  };
}
