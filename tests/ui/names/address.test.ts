import { expect, test } from 'vitest';
import { ALL_KEYS, allChoices, otherNameOf } from '../../../src/engine/index.ts';
import { exerciseAddress, exerciseAt, keyAddress, keyAt } from '../../../src/ui/names/address.ts';

test('every key is found again by its address', () => {
  const keys = ALL_KEYS.flatMap((key) => [key, otherNameOf(key) ?? key]);
  expect(keys.map((key) => keyAt(keyAddress(key)))).toEqual(keys);
});

test('every exercise has an address of its own, of letters, digits and hyphens, by which it is found again', () => {
  const addresses = allChoices().map(exerciseAddress);
  expect(new Set(addresses).size).toBe(addresses.length);
  expect(addresses.filter((address) => !/^[a-z0-9-]+$/.test(address))).toEqual([]);
  expect(addresses.map(exerciseAt)).toEqual(allChoices());
});

test('another rhythm and register stand in the address too', () => {
  const choice = { key: 'C major', form: 'scale', hands: 'right', octaves: 2 } as const;
  const there = { ...choice, notesABeat: 6, register: -1 } as const;
  expect(exerciseAddress(there)).toBe('c-major-scale-right-2-6-a-beat-1-down');
  for (const one of [choice, there, { ...choice, register: 1 } as const])
    expect(exerciseAt(exerciseAddress(one))).toEqual(one);
  expect(exerciseAt('c-major-scale-right-2-5-a-beat')).toBeNull();
});

test.each(['', 'h-major', 'g-sharp-major', 'c-major', 'constructor-major', 'a-b-c'])(
  '"%s" leads to no exercise',
  (address) => {
    expect(exerciseAt(address)).toBeNull();
  },
);

test.each(['', 'h-major', 'g-sharp-major', 'ab', 'AB-MAJOR'])('"%s" leads to no key', (address) => {
  expect(keyAt(address)).toBeNull();
});

test.each([
  'c-major-scale-melodic-right-1',
  'c-major-scale-right-9',
  'c-major-scale-right-0',
  'c-major-progression-right-2',
])('"%s" has a part that the exercise does not have', (address) => expect(exerciseAt(address)).toBeNull());
