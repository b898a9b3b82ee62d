/** Small choices that outlive the page: a name and a text each. */
export interface Settings {
  /** null: nothing is kept under this name, or nothing can be read here */
  read(name: string): string | null;
  write(name: string, value: string): void;
}

const PREFIX = 'evenfall-';

/** Kept in the browser's own storage. Where that is closed (private windows), a choice lasts as long as the page. */
export function createSettings(open: () => Pick<Storage, 'getItem' | 'setItem'>): Settings {
  const here = new Map<string, string>();
  return {
    read: (name) => {
      try {
        return here.get(name) ?? open().getItem(PREFIX + name);
      } catch {
        return here.get(name) ?? null;
      }
    },
    write: (name, value) => {
      here.set(name, value);
      try {
        open().setItem(PREFIX + name, value);
      } catch {
        // Full or closed: the choice holds until the page is closed.
      }
    },
  };
}
