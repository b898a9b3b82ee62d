/** The pages of Evenfall, by the names they have in the address. */
export const VIEWS = ['play', 'stand', 'keys', 'journal', 'teacher'] as const;
export type View = (typeof VIEWS)[number];

/** The part of the address after #, passed in. */
export interface Address {
  readonly read: () => string;
  /** a step further, from which Back leads here again */
  readonly write: (hash: string) => void;
  /** the same step, told more exactly */
  readonly rewrite: (hash: string) => void;
  readonly onChange: (callback: () => void) => void;
}

/** Which page is shown, and what of it; the address tells both, so that Back, a reload, a shared link and a bookmark lead there. */
export class Views {
  current: View = $state('play');
  /** what of the page is shown, e.g. "ab-major"; '': nothing in particular */
  place: string = $state('');
  readonly #address: Address;

  constructor(address: Address) {
    this.#address = address;
    this.#follow();
    address.onChange(() => this.#follow());
  }

  go(view: View, place = ''): void {
    if (view === this.current && place === this.place) return;
    this.#address.write(hashOf(view, place));
    [this.current, this.place] = [view, place];
  }

  /** The same page is told by another place, and Back does not lead to the one before. */
  stay(place: string): void {
    if (place === this.place) return;
    this.#address.rewrite(hashOf(this.current, place));
    this.place = place;
  }

  #follow(): void {
    const [asked, ...place] = this.#address.read().split('/');
    const known = VIEWS.find((view) => view === asked);
    this.current = known ?? 'play';
    this.place = known === undefined ? '' : place.join('/');
  }
}

/** A page and what of it is shown → the part of the address after #. */
export function hashOf(view: View, place: string): string {
  if (place !== '') return `${view}/${place}`;
  return view === 'play' ? '' : view;
}
