import { dense } from './layers.ts';
import type { Layer } from './layers.ts';
import { STRIPS } from './strips.ts';
import type { Glance } from './types.ts';

/** Frames of the long view from the moment on, and of the middle one in four parts from just before it on; as trained. */
const LONG = { from: 3, to: 7 } as const;
const MIDDLE = [
  [6, 8],
  [8, 11],
  [11, 15],
  [15, 19],
] as const;

export const COMPARED_LEVELS = (LONG.to - LONG.from + MIDDLE.length) * STRIPS;

/** The long and the middle view of a key (frames × frequencies) → its levels while it would sound, in eight parts of time. */
export function levelsOf(long: Float32Array, middle: Float32Array): Float32Array {
  const levels = new Float32Array(COMPARED_LEVELS);
  levels.set(long.subarray(LONG.from * STRIPS, LONG.to * STRIPS));
  MIDDLE.forEach(([from, to], part) => {
    const at = (LONG.to - LONG.from + part) * STRIPS;
    for (let frame = from; frame < to; frame++)
      for (let strip = 0; strip < STRIPS; strip++)
        levels[at + strip]! += middle[frame * STRIPS + strip]! / (to - from);
  });
  return levels;
}

/** Layers that compare a glance with its twins: from all that differs to what is added to the last layer. */
export interface Comparing {
  readonly compared: Layer;
  readonly compressed: Layer;
  readonly added: Layer;
}

/**
 * A glance and its twins, the same key among the same others at other moments → what they add to its last layer. How far is it
 * from where it was struck, and from where it was not? How likely a twin was struck is what the network said of it by itself.
 */
export function addedByTwins(
  { compared, compressed, added }: Comparing,
  own: Glance,
  twins: readonly Glance[],
): Float32Array {
  const { levels, seen, told } = own.glimpse;
  const struckAt = seen.length + told.length;
  const silentAt = struckAt + levels.length;
  const toldAt = silentAt + levels.length;
  const input = new Float32Array(toldAt + told.length + 1);
  input.set(seen);
  input.set(told, seen.length);
  for (const { logOdds, glimpse } of twins) {
    const share = 1 / twins.length;
    const struck = share / (1 + Math.exp(-logOdds));
    for (let i = 0; i < levels.length; i++) {
      const apart = levels[i]! - glimpse.levels[i]!;
      input[struckAt + i]! += struck * apart;
      input[silentAt + i]! += (share - struck) * apart;
    }
    for (let i = 0; i < told.length; i++) input[toldAt + i]! += share * glimpse.told[i]!;
    input[toldAt + told.length]! += struck;
  }
  return dense(added, dense(compressed, dense(compared, input)), true);
}
