/** The pages of Evenfall, by the names they have in the address. */
export const VIEWS = ['play', 'stand', 'keys', 'journal', 'teacher'] as const;
export type View = (typeof VIEWS)[number];

/** The part of the address after #, passed in. */
export interface Address {
  readonly read: () => string;
  readonly write: (hash: string) => void;
  readonly onChange: (callback: () => void) => void;
}

/** Which page is shown; the address tells it, so that going back and bookmarks work. */
export class Views {
  current: View = $state('play');
  readonly #address: Address;

  constructor(address: Address) {
    this.#address = address;
    this.#follow();
    address.onChange(() => this.#follow());
  }

  go(view: View): void {
    this.#address.write(view === 'play' ? '' : view);
    this.current = view;
  }

  #follow(): void {
    const asked = this.#address.read();
    this.current = VIEWS.find((view) => view === asked) ?? 'play';
  }
}
