import { describe, expect, it } from 'vitest';
import { keyName, noteName } from '../../src/engine/exercise/index.ts';

/**
 * Note names as music21 10.5.0 has them (an independent implementation, music21.org): Pitch.german and Pitch.italian,
 * printed once and kept as they came, with "b" for its "-" and the Italian words for accidentals as signs.
 */
const BY_MUSIC21: readonly (readonly [name: string, german: string, fixedDo: string])[] = [
  ['Cbb', 'Ceses', 'do♭♭'],
  ['Cb', 'Ces', 'do♭'],
  ['C', 'C', 'do'],
  ['C#', 'Cis', 'do♯'],
  ['C##', 'Cisis', 'do×'],
  ['Dbb', 'Deses', 're♭♭'],
  ['Db', 'Des', 're♭'],
  ['D', 'D', 're'],
  ['D#', 'Dis', 're♯'],
  ['D##', 'Disis', 're×'],
  ['Ebb', 'Eses', 'mi♭♭'],
  ['Eb', 'Es', 'mi♭'],
  ['E', 'E', 'mi'],
  ['E#', 'Eis', 'mi♯'],
  ['E##', 'Eisis', 'mi×'],
  ['Fbb', 'Feses', 'fa♭♭'],
  ['Fb', 'Fes', 'fa♭'],
  ['F', 'F', 'fa'],
  ['F#', 'Fis', 'fa♯'],
  ['F##', 'Fisis', 'fa×'],
  ['Gbb', 'Geses', 'sol♭♭'],
  ['Gb', 'Ges', 'sol♭'],
  ['G', 'G', 'sol'],
  ['G#', 'Gis', 'sol♯'],
  ['G##', 'Gisis', 'sol×'],
  ['Ab', 'As', 'la♭'],
  ['A', 'A', 'la'],
  ['A#', 'Ais', 'la♯'],
  ['A##', 'Aisis', 'la×'],
  ['Bbb', 'Heses', 'si♭♭'],
  ['Bb', 'B', 'si♭'],
  ['B', 'H', 'si'],
  ['B#', 'His', 'si♯'],
  ['B##', 'Hisis', 'si×'],
];

describe('note names of other countries', () => {
  it.each(BY_MUSIC21)('%s is %s in German and %s in fixed-do', (name, german, fixedDo) => {
    expect(noteName(name, 'german')).toBe(german);
    expect(noteName(name, 'fixed-do')).toBe(fixedDo);
    expect(noteName(`${name}4`, 'german')).toBe(german);
  });

  // music21 has Ases; German dictionaries and teachers say Asas (memory). No exercise of the set has it.
  it('A double flat is Asas in German', () => {
    expect(noteName('Abb', 'german')).toBe('Asas');
  });
});

/** Duden's spelling: A-Dur, a-Moll (memory). Common practice, no source, for the syllables. */
describe('names of keys', () => {
  it.each([
    ['Ab major', 'As-Dur', 'La♭-Dur', 'As major', 'La♭ major'],
    ['B major', 'H-Dur', 'Si-Dur', 'H major', 'Si major'],
    ['Bb major', 'B-Dur', 'Si♭-Dur', 'B major', 'Si♭ major'],
    ['B minor', 'h-Moll', 'Si-Moll', 'H minor', 'Si minor'],
    ['Bb minor', 'b-Moll', 'Si♭-Moll', 'B minor', 'Si♭ minor'],
    ['Eb minor', 'es-Moll', 'Mi♭-Moll', 'Es minor', 'Mi♭ minor'],
    ['F# minor', 'fis-Moll', 'Fa♯-Moll', 'Fis minor', 'Fa♯ minor'],
  ])('%s is %s in German, %s with syllables', (key, german, germanDo, english, englishDo) => {
    expect(keyName(key, { language: 'de', naming: 'german' })).toBe(german);
    expect(keyName(key, { language: 'de', naming: 'fixed-do' })).toBe(germanDo);
    expect(keyName(key, { language: 'en', naming: 'german' })).toBe(english);
    expect(keyName(key, { language: 'en', naming: 'fixed-do' })).toBe(englishDo);
  });

  it('in letters they are as ever', () => {
    expect(keyName('Ab major', { language: 'en', naming: 'letters' })).toBe('A♭ major');
    expect(keyName('F# minor', { language: 'de', naming: 'letters' })).toBe('f♯-Moll');
  });
});
