import { expect, test } from 'vitest';
import { Views } from '../../src/ui/views.svelte.ts';

const addressAt = (hash: string) => {
  let callback = (): void => undefined;
  const address = { hash, steps: [hash] };
  const now = (next: string): void => void (address.hash = next);
  return {
    address,
    read: () => address.hash,
    write: (next: string) => {
      now(next);
      address.steps.push(next);
    },
    rewrite: (next: string) => {
      now(next);
      address.steps[address.steps.length - 1] = next;
    },
    onChange: (told: () => void) => void (callback = told),
    type: (next: string) => {
      now(next);
      callback();
    },
  };
};

test.each([
  ['keys', 'keys', ''],
  ['', 'play', ''],
  ['<b>', 'play', ''],
  ['<b>/x', 'play', ''],
  ['keys/ab-major', 'keys', 'ab-major'],
  ['play/attempt/0k2x-1', 'play', 'attempt/0k2x-1'],
  ['teacher/', 'teacher', ''],
])('the address "%s" leads to the page %s and there to "%s"', (hash, view, place) => {
  const { current, place: shown } = new Views(addressAt(hash));
  expect({ current, shown }).toEqual({ current: view, shown: place });
});

test('going somewhere writes the address, and a typed or earlier address is followed', () => {
  const place = addressAt('');
  const views = new Views(place);
  views.go('journal');
  views.go('keys', 'd-major');
  expect(place.address.steps).toEqual(['', 'journal', 'keys/d-major']);
  place.type('keys');
  expect([views.current, views.place]).toEqual(['keys', '']);
});

test('what is told more exactly is no step of its own, and going where one is already is none', () => {
  const place = addressAt('play/c-major-scale-right-1');
  const views = new Views(place);
  views.stay('c-major-scale-right-2');
  views.go('play', 'c-major-scale-right-2');
  expect(place.address.steps).toEqual(['play/c-major-scale-right-2']);
  views.go('play');
  expect(place.address.steps).toEqual(['play/c-major-scale-right-2', '']);
});
