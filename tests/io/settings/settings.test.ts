import { expect, test } from 'vitest';
import { createSettings } from '../../../src/io/settings/index.ts';

test('a choice outlives the page', () => {
  const kept = new Map<string, string>();
  const storage = {
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, value: string) => void kept.set(name, value),
  };
  createSettings(() => storage).write('language', 'de');
  expect(createSettings(() => storage).read('language')).toBe('de');
  expect(createSettings(() => storage).read('other')).toBeNull();
});

test('where the storage is closed a choice holds as long as the page', () => {
  const settings = createSettings(() => {
    throw new Error('closed');
  });
  settings.write('language', 'de');
  expect(settings.read('language')).toBe('de');
  expect(settings.read('other')).toBeNull();
});
