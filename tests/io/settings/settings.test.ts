import { describe, expect, it } from 'vitest';
import { createSettings } from '../../../src/io/settings/index.ts';

describe('what is remembered on this device', () => {
  it('comes back as it was', () => {
    const kept = new Map<string, string>();
    const store = {
      getItem: (name: string) => kept.get(name) ?? null,
      setItem: (name: string, text: string) => void kept.set(name, text),
    };
    createSettings(store).keep('a', { b: [1, 'two', null] });
    expect(createSettings(store).recall('a')).toEqual({ b: [1, 'two', null] });
    expect([...kept.keys()]).toEqual(['evenfall-a']);
  });

  it('is nothing where nothing was, where it is no JSON, and where there is no store', () => {
    const broken = { getItem: () => '{', setItem: () => undefined };
    expect(createSettings(broken).recall('a')).toBeNull();
    expect(createSettings(null).recall('a')).toBeNull();
  });

  it('is lost without an error where the store refuses', () => {
    const full = {
      getItem: (): string => {
        throw new Error('no');
      },
      setItem: (): void => {
        throw new Error('full');
      },
    };
    createSettings(full).keep('a', 1);
    expect(createSettings(full).recall('a')).toBeNull();
  });
});
