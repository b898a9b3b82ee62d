import { createSums } from '../../sums/index.ts';
import type { Sums } from '../../sums/index.ts';
import { stripsOf } from './strips.ts';
import { HELD, roomFor, VIEWS, windowsFor } from './views.ts';
import type { HalfWindow } from './views.ts';

/** What a key is looked at with: a memory, room in it for the sound, and its windows in it, by view. */
export interface Lens {
  readonly sums: Sums;
  readonly room: ReturnType<typeof roomFor>;
  readonly windows: readonly (readonly (HalfWindow | null)[])[];
}

/** Keys whose windows are kept, as many as two hands play over some octaves: some 12 MB. */
const MOST_KEYS = 40;

/** A key comes again and again, in one attempt after the other: its windows are made once for each tuning. */
export class Lenses {
  #sums = createSums();
  #room = roomFor(this.#sums);
  #known = new Map<string, Lens>();

  /** Good until the next is asked for. */
  of(midi: number, cents: number): Lens {
    const name = `${midi}@${cents}`;
    const before = this.#known.get(name);
    if (before !== undefined) return before;
    // A memory only grows: a new one is begun.
    if (this.#known.size === MOST_KEYS) {
      this.#sums = createSums();
      this.#room = roomFor(this.#sums);
      this.#known.clear();
    }
    const [sums, room] = [this.#sums, this.#room];
    const freqsHz = stripsOf(midi, cents);
    const own = VIEWS.slice(0, HELD).map((view) => windowsFor(sums, view, freqsHz));
    const lens = { sums, room, windows: [...own, own[0]!] };
    this.#known.set(name, lens);
    return lens;
  }
}
