import { afterEach, describe, expect, it } from 'vitest';
import { speaking } from '../../../src/ui/language/index.ts';
import {
  fingerName,
  shownKey,
  shownName,
  shownNameWithOctave,
  shownTitle,
  shownWrongName,
  spokenName,
} from '../../../src/ui/names/index.ts';
import { readName, readNames } from '../../../src/ui/names/read.ts';
import { speakAsAtFirst } from '../support/at-first.ts';

afterEach(speakAsAtFirst);

const NAMES = ['C', 'D', 'E', 'F', 'G', 'A', 'B'].flatMap((letter) =>
  ['', '#', '##', 'b', 'bb'].map((sign) => letter + sign),
);

describe('a name that is typed', () => {
  it.each(['letters', 'german', 'fixed-do'] as const)('as it is shown is understood, in %s', (naming) => {
    speaking.callNotes(naming);
    for (const name of NAMES) expect(readName(shownName(name))).toBe(name);
  });

  it.each([
    ['letters', 'f#', 'F#'],
    ['letters', 'bb', 'Bb'],
    ['letters', 'B', 'B'],
    ['letters', 'fx', 'F##'],
    ['letters', 'H', null],
    // In German B is the black key (common practice, no source).
    ['german', 'b', 'Bb'],
    ['german', 'h', 'B'],
    ['german', 'FIS', 'F#'],
    ['german', 'ases', 'Abb'],
    ['fixed-do', 'so#', 'G#'],
    ['fixed-do', 'Si b', null],
    ['fixed-do', 'Sib', 'Bb'],
  ] as const)('in %s, “%s” is %s', (naming, typed, name) => {
    speaking.callNotes(naming);
    expect(readName(typed)).toBe(name);
  });

  it('several stand with blanks, commas or dashes between', () => {
    expect(readNames('F#, c#–G#  x')).toEqual({ names: ['F#', 'C#', 'G#'], unknown: ['x'] });
    expect(readNames('  ')).toEqual({ names: [], unknown: [] });
  });
});

describe('names as the page calls them', () => {
  it('in German', () => {
    speaking.speak('de');
    speaking.callNotes('german');
    expect(shownNameWithOctave('Ab4')).toBe('As4');
    expect(spokenName('Bb3')).toBe('B 3');
    expect(shownWrongName('B3', 'Bb3')).toBe('H');
    expect(shownKey('F# minor')).toBe('fis-Moll');
    expect(fingerName(1)).toBe('Daumen');
    expect(shownTitle({ key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 })).toBe(
      'As-Dur · Tonika-Arpeggio, zwei Oktaven · rechte Hand',
    );
  });

  it('in syllables, spoken with the words of the language', () => {
    speaking.callNotes('fixed-do');
    expect(shownName('F#4')).toBe('fa♯');
    expect(spokenName('F#4')).toBe('fa sharp 4');
    expect(shownWrongName('G4', 'G#4')).toBe('sol♮');
    speaking.speak('de');
    expect(spokenName('Bb4')).toBe('si Be 4');
    speaking.callNotes('letters');
    expect(spokenName('F#4')).toBe('F Kreuz 4');
  });

  it('titles are those of the engine in English', () => {
    expect(shownTitle({ key: 'Ab major', form: 'scale', hands: 'together', octaves: 1 })).toBe(
      'A♭ major · scale, one octave · hands together',
    );
  });
});
