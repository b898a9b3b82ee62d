import { dense } from './layers.ts';
import type { Layer } from './layers.ts';
import { STRIPS } from './strips.ts';
import type { Glance } from './types.ts';

/** Frames of the long view from the moment on, and of the middle one in four parts from just before it on; as trained. */
export const LONG = { from: 3, to: 7 } as const;
const MIDDLE = [
  [6, 8],
  [8, 11],
  [11, 15],
  [15, 19],
] as const;
export const MIDDLE_WANTED = { from: MIDDLE[0][0], to: MIDDLE[3][1] } as const;

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

/** Layers that compare a glance with others: from all that differs to what is added to the last layer. */
export interface Comparing {
  readonly compared: Layer;
  readonly compressed: Layer;
  readonly added: Layer;
}

/** Levels of a key's strips while keys of its step were struck by one hand alone; null: not known. */
export interface HandsApart {
  /** while the other hand's keys were struck, and not this one */
  readonly other: Float32Array | null;
  /** while the own hand's keys were struck, this one among them */
  readonly own: Float32Array | null;
}

/**
 * A glance beside its twins, the same key among the same others at other moments, and beside hands apart → what they add to its
 * last layer; null where there is nothing to compare it with. How far is it from where it was struck, and from where it was not?
 * How likely a twin was struck is what the network said of it by itself; of hands apart it is known.
 */
export function addedBeside(
  { compared, compressed, added }: Comparing,
  own: Glance,
  twins: readonly Glance[],
  apart: HandsApart,
): Float32Array | null {
  if (twins.length === 0 && apart.other === null && apart.own === null) return null;
  const { levels, seen, told } = own.glimpse;
  const struckAt = seen.length + told.length;
  const silentAt = struckAt + levels.length;
  const toldAt = silentAt + levels.length;
  const shareAt = toldAt + told.length;
  const otherAt = shareAt + 2;
  const ownAt = otherAt + levels.length;
  const knownAt = ownAt + levels.length;
  const input = new Float32Array(knownAt + 2);
  input.set(seen);
  input.set(told, seen.length);
  for (const { logOdds, glimpse } of twins) {
    const share = 1 / twins.length;
    const struck = share / (1 + Math.exp(-logOdds));
    for (let i = 0; i < levels.length; i++) {
      const away = levels[i]! - glimpse.levels[i]!;
      input[struckAt + i]! += struck * away;
      input[silentAt + i]! += (share - struck) * away;
    }
    for (let i = 0; i < told.length; i++) input[toldAt + i]! += share * glimpse.told[i]!;
    input[shareAt]! += struck;
  }
  input[shareAt + 1] = twins.length > 0 ? 1 : 0;
  [apart.other, apart.own].forEach((alone, index) => {
    if (alone === null) return;
    const at = index === 0 ? otherAt : ownAt;
    for (let i = 0; i < levels.length; i++) input[at + i] = levels[i]! - alone[i]!;
    input[knownAt + index] = 1;
  });
  return dense(added, dense(compressed, dense(compared, input)), true);
}
