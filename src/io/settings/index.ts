export { createDrafts } from './drafts.ts';
export type { Drafts } from './drafts.ts';

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
