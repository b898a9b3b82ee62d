/** What somebody has typed and not kept yet, by the field's name; it outlives the page. */
export interface Drafts {
  /** null: nothing was typed there */
  read(name: string): string | null;
  write(name: string, text: string): void;
  forget(name: string): void;
}

const PREFIX = 'evenfall-draft-';

/** Kept in the browser's own storage, which is written at once: even a page that is killed leaves what was typed. Where that is full or closed, it lasts as long as the page. */
export function createDrafts(open: () => Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>): Drafts {
  const here = new Map<string, string>();
  const using = <T>(act: (storage: ReturnType<typeof open>) => T): T | null => {
    try {
      return act(open());
    } catch {
      return null;
    }
  };
  return {
    read: (name) => here.get(name) ?? using((storage) => storage.getItem(PREFIX + name)),
    write: (name, text) => {
      here.set(name, text);
      using((storage) => storage.setItem(PREFIX + name, text));
    },
    forget: (name) => {
      here.delete(name);
      using((storage) => storage.removeItem(PREFIX + name));
    },
  };
}
