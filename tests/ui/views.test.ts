import { expect, test } from 'vitest';
import { Views } from '../../src/ui/views.svelte.ts';

const addressAt = (hash: string) => {
  let callback = (): void => undefined;
  const address = { hash };
  return {
    address,
    read: () => address.hash,
    write: (next: string) => void (address.hash = next),
    onChange: (told: () => void) => void (callback = told),
    type: (next: string) => {
      address.hash = next;
      callback();
    },
  };
};

test('the address says which page is shown, an unknown one the first', () => {
  expect(new Views(addressAt('keys')).current).toBe('keys');
  expect(new Views(addressAt('')).current).toBe('play');
  expect(new Views(addressAt('<b>')).current).toBe('play');
});

test('going to a page writes the address, and a typed or earlier address is followed', () => {
  const place = addressAt('');
  const views = new Views(place);
  views.go('journal');
  expect(place.address.hash).toBe('journal');
  expect(views.current).toBe('journal');
  place.type('keys');
  expect(views.current).toBe('keys');
});
