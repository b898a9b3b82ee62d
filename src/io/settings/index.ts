/** Small texts by their names that outlive the page: choices; and what somebody has typed and not kept yet. */
export interface Settings {
  /** null: nothing is kept under this name, or nothing can be read here */
  read(name: string): string | null;
  write(name: string, value: string): void;
  forget(name: string): void;
}

/** As much of the browser's own storage as is used. */
type Kept = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/**
 * Kept in the browser's own storage, which is written at once: even a page that is killed leaves what was typed. Where that is full or
 * closed (private windows), it lasts as long as the page.
 */
export function createSettings(open: () => Kept, prefix = 'evenfall-'): Settings {
  const here = new Map<string, string>();
  const using = <T>(act: (storage: Kept) => T): T | null => {
    try {
      return act(open());
    } catch {
      return null;
    }
  };
  return {
    read: (name) => here.get(name) ?? using((storage) => storage.getItem(prefix + name)),
    write: (name, value) => {
      here.set(name, value);
      using((storage) => storage.setItem(prefix + name, value));
    },
    forget: (name) => {
      here.delete(name);
      using((storage) => storage.removeItem(prefix + name));
    },
  };
}

/** The same for what is typed. */
export const createDrafts = (open: () => Kept): Settings => createSettings(open, 'evenfall-draft-');

/** What was remembered under a name, as it was; null: nothing, or nothing that can be read. Whoever asks checks its shape. */
export function recall(settings: Settings, name: string): unknown {
  try {
    return JSON.parse(settings.read(name) ?? 'null') as unknown;
  } catch {
    return null;
  }
}

/** Remembers a value that JSON can write. */
export function remember(settings: Settings, name: string, value: unknown): void {
  settings.write(name, JSON.stringify(value));
}
