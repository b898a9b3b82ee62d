import type { SituationName } from './said/index.ts';
import type { Scene } from './scene.ts';

/** The same advice stands for so many attempts; then the next way to the same end is tried: never the same three days running. */
const ATTEMPTS_EACH = 2;

/** In how many attempts on end before this one one of these troubles was spoken of. */
export function timesBefore({ earlier }: Scene, ...names: readonly SituationName[]): number {
  const last = earlier.findLastIndex(({ words }) => !names.some((name) => name === words.situation));
  return earlier.length - 1 - last;
}

/** One of several ways to the same end: another where the trouble has lasted, so that nobody is told the same for days. */
export function turnAbout<Advice>(times: number, ways: readonly [Advice, ...Advice[]]): Advice {
  return ways[Math.floor(times / ATTEMPTS_EACH) % ways.length]!;
}
