import { describe, expect, it } from 'vitest';
import {
  fingerName,
  nameParts,
  shownKey,
  shownName,
  shownNameWithOctave,
  shownWrongName,
  spokenName,
} from '../../../src/ui/names/index.ts';

describe('a note name', () => {
  // Scientific pitch notation: letter, accidental, octave (Acoustical Society of America, 1939).
  it.each([
    ['Ab4', 'A♭', 'A♭4', 'A flat 4'],
    ['F##5', 'F×', 'F×5', 'F double sharp 5'],
    ['Bbb3', 'B♭♭', 'B♭♭3', 'B double flat 3'],
    ['C', 'C', 'C', 'C'],
    ['G#', 'G♯', 'G♯', 'G sharp'],
    ['C-1', 'C', 'C-1', 'C -1'],
  ])('%s is shown as %s or %s and spoken as %s', (name, shown, withOctave, spoken) => {
    expect(shownName(name)).toBe(shown);
    expect(shownNameWithOctave(name)).toBe(withOctave);
    expect(spokenName(name)).toBe(spoken);
  });

  it('may be written with signs', () => {
    expect(nameParts('G♯4')).toEqual({ letter: 'G', accidental: '#', octave: 4 });
    expect(nameParts('D♭')).toEqual({ letter: 'D', accidental: 'b', octave: null });
  });

  it('that is none is left alone', () => {
    expect(nameParts('H4')).toBeNull();
    expect(shownName('H4')).toBe('H4');
  });
});

it.each([
  ['G4', 'G#4', 'G♮'],
  ['B3', 'Bb3', 'B♮'],
  ['F#4', 'F4', 'F♯'],
  ['A4', 'G#4', 'A'],
  ['G4', 'G4', 'G'],
])('%s struck for %s is shown as %s', (name, wanted, shown) => {
  expect(shownWrongName(name, wanted)).toBe(shown);
});

it('a key keeps its mode', () => {
  expect(shownKey('F# minor')).toBe('F♯ minor');
});

it('fingers count from the thumb, 1 to 5 (common practice, no source)', () => {
  expect([1, 2, 3, 4, 5].map(fingerName)).toEqual([
    'thumb',
    'second finger',
    'third finger',
    'fourth finger',
    'little finger',
  ]);
});
