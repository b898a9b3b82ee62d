import type { Settings } from '../../io/settings/index.ts';

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
