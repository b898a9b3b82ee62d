import { createProjector } from './kernel/index.ts';
import type { Projector } from './kernel/index.ts';
import { stripsOf } from './strips.ts';
import { HELD, roomFor, VIEWS, windowsFor } from './views.ts';
import type { HalfWindow } from './views.ts';

/** What a key is looked at with: a projector, room in it for the sound, and its windows in it, by view. */
export interface Lens {
  readonly projector: Projector;
  readonly room: ReturnType<typeof roomFor>;
  readonly windows: readonly (readonly (HalfWindow | null)[])[];
}

/** Keys whose windows are kept, as many as two hands play over some octaves: some 12 MB. */
const MOST_KEYS = 40;

/** A key comes again and again, in one attempt after the other: its windows are made once for each tuning. */
export class Lenses {
  #projector = createProjector();
  #room = roomFor(this.#projector);
  #known = new Map<string, Lens>();

  /** Good until the next is asked for. */
  of(midi: number, cents: number): Lens {
    const name = `${midi}@${cents}`;
    const before = this.#known.get(name);
    if (before !== undefined) return before;
    // A projector's memory only grows: a new one is begun.
    if (this.#known.size === MOST_KEYS) {
      this.#projector = createProjector();
      this.#room = roomFor(this.#projector);
      this.#known.clear();
    }
    const [projector, room] = [this.#projector, this.#room];
    const freqsHz = stripsOf(midi, cents);
    const own = VIEWS.slice(0, HELD).map((view) => windowsFor(projector, view, freqsHz));
    const lens = { projector, room, windows: [...own, own[0]!] };
    this.#known.set(name, lens);
    return lens;
  }
}
