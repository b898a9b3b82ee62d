import { indicesIn, soundingAt, type Spot } from './spots.ts';

/** The spots that sound where the player stands, by index; empty where nothing plays. */
export class Sounding {
  readonly #now: string;
  readonly indices: ReadonlySet<number>;

  constructor(spots: () => readonly Spot[], positionSec: () => number | null) {
    // As text, so that a frame in which nothing new sounds changes nothing.
    this.#now = $derived.by(() => {
      const at = positionSec();
      return at === null
        ? ''
        : soundingAt(spots(), at)
            .map(({ index }) => index)
            .join(' ');
    });
    this.indices = $derived(indicesIn(this.#now));
  }
}
