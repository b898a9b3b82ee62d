/** A seeded source of chance: the same seed gives the same attempt on every machine. */
export interface Random {
  /** evenly spread in [from, to) */
  uniform(from: number, to: number): number;
  /** Gaussian about 0 */
  normal(sd: number): number;
  /** 0 … below − 1 */
  integer(below: number): number;
  pick<T>(from: readonly T[]): T;
  /** true with this probability */
  chance(probability: number): boolean;
  /** a source of its own, so that drawing more for one purpose does not disturb another */
  fork(label: string): Random;
}

/** Seed → source. Generator: mulberry32 (public domain, Tommy Ettinger); Gaussian by Box and Muller. */
export function createRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const random: Random = {
    uniform: (from, to) => from + (to - from) * next(),
    normal: (sd) => sd * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    integer: (below) => Math.floor(next() * below),
    pick: (from) => from[Math.floor(next() * from.length)]!,
    chance: (probability) => next() < probability,
    fork: (label) => createRandom(hash(`${seed}/${label}`)),
  };
  return random;
}

/** Text → 32 bits (FNV-1a). */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (const character of text) value = Math.imul(value ^ character.codePointAt(0)!, 0x01000193);
  return value >>> 0;
}
