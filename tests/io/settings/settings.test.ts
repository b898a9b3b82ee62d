import { expect, test } from 'vitest';
import { createDrafts, createSettings } from '../../../src/io/settings/index.ts';
import { storageIn } from '../../support/storage.ts';

test('a choice outlives the page', () => {
  const storage = storageIn(new Map());
  createSettings(() => storage).write('language', 'de');
  expect(createSettings(() => storage).read('language')).toBe('de');
  expect(createSettings(() => storage).read('other')).toBeNull();
});

test('what is typed outlives the page until it is kept, and lasts as long as the page where the storage is full', () => {
  const kept = new Map<string, string>();
  let full = false;
  const storage = {
    ...storageIn(kept),
    setItem: (name: string, value: string) => {
      if (full) throw new DOMException('full', 'QuotaExceededError');
      kept.set(name, value);
    },
  };
  const open = () => createDrafts(() => storage);
  const drafts = open();
  drafts.write('words', 'Good w');
  expect(open().read('words')).toBe('Good w');
  full = true;
  drafts.write('words', 'Good work');
  expect(drafts.read('words')).toBe('Good work');
  drafts.forget('words');
  expect([drafts.read('words'), open().read('words')]).toEqual([null, null]);
});

test('where the storage is closed a choice holds as long as the page', () => {
  const settings = createSettings(() => {
    throw new Error('closed');
  });
  settings.write('language', 'de');
  expect(settings.read('language')).toBe('de');
  expect(settings.read('other')).toBeNull();
});
