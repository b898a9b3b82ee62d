/** Small things that the page remembers on this device: choices, and what it knows of this piano. */
export interface Settings {
  /** What was kept under a name, as it was; null: nothing, or nothing that can be read. Whoever asks checks its shape. */
  recall(name: string): unknown;
  /** Keeps a value that JSON can write. Where the browser keeps nothing, it is forgotten with the page. */
  keep(name: string, value: unknown): void;
}

/** Before each name, so that pages of one origin do not meet. */
const PREFIX = 'evenfall-';

export function createSettings(store: Pick<Storage, 'getItem' | 'setItem'> | null): Settings {
  return {
    recall: (name) => {
      try {
        const text = store?.getItem(PREFIX + name) ?? null;
        return text === null ? null : (JSON.parse(text) as unknown);
      } catch {
        return null;
      }
    },
    keep: (name, value) => {
      try {
        store?.setItem(PREFIX + name, JSON.stringify(value));
      } catch {
        // Full or refused (private windows): nothing is lost but the choice.
      }
    },
  };
}

/** The browser's own store; null where it refuses. */
export function browserStore(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
