import fc from 'fast-check';
import { Key } from 'tonal';
import { describe, expect, it } from 'vitest';
import { UsageError } from '../../../src/engine/base/errors.ts';
import { ALL_KEYS, displayName, keyFacts, normaliseKey } from '../../../src/engine/exercise/index.ts';

describe('a key as somebody writes it', () => {
  it.each([
    ['D major', 'D major'],
    ['f♯ Minor', 'F# minor'],
    ['F# minor', 'F# minor'],
    ['f#m', 'F# minor'],
    ['FM', 'F major'],
    ['Fm', 'F minor'],
    ['B♭ major', 'Bb major'],
    ['bb major', 'Bb major'],
    ['bbm', 'Bb minor'],
    ['bm', 'B minor'],
    ['b flat minor', 'Bb minor'],
    ['E-flat major', 'Eb major'],
    ['c sharp min', 'C# minor'],
    ['Amaj', 'A major'],
    ['  G   MINOR ', 'G minor'],
    ['Gb major', 'Gb major'],
    ['F# major', 'F# major'],
    ['Cb major', 'Cb major'],
    ['A# minor', 'A# minor'],
  ])('"%s" is read as %s', (text, key) => {
    expect(normaliseKey(text)).toBe(key);
  });

  it.each([
    ['H major', /key="H major" is not a key\. Write a letter A to G/],
    ['C', /key="C" is not a key.*then major or minor/],
    ['', /key="" is not a key/],
    ['C dorian', /is not a key/],
    ['C##  major', /is not a key/],
    ['G# major', /would need 8 sharps or flats.*at most 7.*other name/],
    ['Fb major', /would need 8/],
    ['Db minor', /would need 8/],
  ])('"%s" is refused, with the way out', (text, message) => {
    expect(() => normaliseKey(text)).toThrow(UsageError);
    expect(() => normaliseKey(text)).toThrow(message);
  });

  it('reads every key back from its own name, plain or with signs, in any case', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ALL_KEYS), fc.boolean(), (key, loud) => {
        expect(normaliseKey(key)).toBe(key);
        expect(normaliseKey(displayName(key))).toBe(key);
        const [tonic, mode] = key.split(' ') as [string, string];
        expect(normaliseKey(`${tonic.toLowerCase()} ${loud ? mode.toUpperCase() : mode}`)).toBe(key);
      }),
    );
  });
});

describe('the facts of a key', () => {
  it.each(
    ['C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#', 'F', 'Bb', 'Eb', 'Ab', 'Db', 'Gb', 'Cb'].map((tonic) => [
      `${tonic} major`,
      `${Key.majorKey(tonic).minorRelative} minor`,
      Key.majorKey(tonic).alteration,
    ]),
  )('%s and %s have the signature that tonal gives them: %i', (major, minor, alteration) => {
    for (const key of [major, minor]) {
      const { signature, accidental } = keyFacts(String(key));
      expect(signature.length * (accidental === 'flats' ? -1 : 1)).toBe(alteration);
    }
  });

  it('go round the circle of fifths: one sharp more, or one flat fewer, from key to key', () => {
    const signed = (key: string) => {
      const { signature, accidental } = keyFacts(key);
      return accidental === 'flats' ? -signature.length : signature.length;
    };
    // Common practice, no source: after F♯ (six sharps) the circle goes on with D♭ (five flats), after G♯ minor with E♭.
    expect(ALL_KEYS.slice(0, 12).map(signed)).toEqual([0, 1, 2, 3, 4, 5, 6, -5, -4, -3, -2, -1]);
    expect(ALL_KEYS.slice(12).map(signed)).toEqual([0, 1, 2, 3, 4, 5, -6, -5, -4, -3, -2, -1]);
  });

  it.each(ALL_KEYS)('spell %s with each letter once in every scale', (key) => {
    const { scale, minorScales } = keyFacts(key);
    for (const names of [scale, ...Object.values(minorScales ?? {})]) {
      expect(names.map((name) => name.charAt(0)).sort()).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G']);
    }
  });

  it.each(ALL_KEYS)('put the sharps and flats of %s, and no others, into its scale', (key) => {
    const { signature, scale } = keyFacts(key);
    expect(scale.filter((name) => name.length > 1).sort()).toEqual([...signature].sort());
  });

  it('accept any writing of the key', () => {
    expect(keyFacts('e♭ MINOR')).toEqual(keyFacts('Eb minor'));
  });

  it('spell A major with G sharp', () => {
    expect(keyFacts('A major').scale).toEqual(['A', 'B', 'C#', 'D', 'E', 'F#', 'G#']);
  });
});
