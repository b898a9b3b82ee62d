import { expect, test } from 'vitest';
import { GERMAN } from '../../../src/ui/language/german/index.ts';
import { languageOf, learn, Speaking, type Memory } from '../../../src/ui/language/index.ts';

const memoryOf = (kept: Record<string, string> = {}): Memory & { readonly kept: Record<string, string> } => ({
  kept,
  read: (name) => kept[name] ?? null,
  write: (name, value) => (kept[name] = value),
});

test('English and letters, where nothing was chosen and no other language is preferred', () => {
  const speaking = new Speaking();
  speaking.remember(memoryOf(), ['fr-FR', 'toString']);
  expect(speaking.locale).toEqual({ language: 'en', naming: 'letters' });
});

test('the browser’s language, where it is one of ours', () => {
  const speaking = new Speaking();
  speaking.remember(memoryOf(), ['fr', 'de-AT', 'en']);
  expect(speaking.locale).toEqual({ language: 'de', naming: 'german' });
  expect(speaking.strings.decimalSign).toBe(',');
  speaking.speak('en');
});

test('note names follow the language until somebody chooses them', () => {
  const memory = memoryOf();
  const speaking = new Speaking();
  speaking.remember(memory, []);
  speaking.speak('de');
  expect(speaking.naming).toBe('german');
  speaking.callNotes('fixed-do');
  speaking.speak('en');
  expect(speaking.naming).toBe('fixed-do');
  expect(memory.kept).toEqual({ language: 'en', 'note-names': 'fixed-do' });
});

test('tables are written as spreadsheets of the language expect, until somebody chooses', () => {
  const memory = memoryOf();
  const speaking = new Speaking();
  speaking.remember(memory, ['de']);
  expect(speaking.spreadsheet).toBe('comma');
  speaking.writeTables('point');
  expect(speaking.spreadsheet).toBe('point');
  const later = new Speaking();
  later.remember(memoryOf(memory.kept), ['de']);
  expect(later.spreadsheet).toBe('point');
  later.remember(memoryOf({ spreadsheet: 'tab' }), ['en']);
  expect(later.spreadsheet).toBe('point');
});

test('what was chosen comes back, and what nobody could have chosen does not', () => {
  const speaking = new Speaking();
  speaking.remember(memoryOf({ language: 'de', 'note-names': 'letters' }), ['en']);
  expect(speaking.locale).toEqual({ language: 'de', naming: 'letters' });
  speaking.remember(memoryOf({ language: 'xx', 'note-names': 'loud' }), ['de']);
  expect(speaking.locale).toEqual({ language: 'en', naming: 'letters' });
});

test('a language is fetched when it is spoken first', async () => {
  await learn('de');
  const speaking = new Speaking();
  speaking.speak('de');
  expect(speaking.strings).toBe(GERMAN);
  expect(languageOf(memoryOf(), ['de-AT'])).toBe('de');
  expect(languageOf(memoryOf({ language: 'en' }), ['de-AT'])).toBe('en');
  // How numbers are written is the page's, and other tests read it.
  speaking.speak('en');
});
