import { describe, expect, it } from 'vitest';
import { ALL_KEYS, keyFacts } from '../../src/engine/exercise/index.ts';

/**
 * Carl E. Gardner, Essentials of Music Theory: Elementary (Carl Fischer, New York 1912; Project Gutenberg 65500),
 * list of the fifteen major scales used in practice together with their signatures.
 */
const GARDNER_MAJOR: readonly (readonly [key: string, count: number, kind: string, letters: string])[] = [
  ['C major', 0, 'none', ''],
  ['G major', 1, 'sharps', 'f'],
  ['D major', 2, 'sharps', 'f c'],
  ['A major', 3, 'sharps', 'f c g'],
  ['E major', 4, 'sharps', 'f c g d'],
  ['B major', 5, 'sharps', 'f c g d a'],
  ['F# major', 6, 'sharps', 'f c g d a e'],
  ['C# major', 7, 'sharps', 'f c g d a e b'],
  ['F major', 1, 'flats', 'b'],
  ['Bb major', 2, 'flats', 'b e'],
  ['Eb major', 3, 'flats', 'b e a'],
  ['Ab major', 4, 'flats', 'b e a d'],
  ['Db major', 5, 'flats', 'b e a d g'],
  ['Gb major', 6, 'flats', 'b e a d g c'],
  ['Cb major', 7, 'flats', 'b e a d g c f'],
];

/** Minor keys by number of sharps, 0 to 7, and of flats, 1 to 7: the circle of fifths; common practice, from memory. */
const MINOR_BY_SHARPS = ['A', 'E', 'B', 'F#', 'C#', 'G#', 'D#', 'A#'];
const MINOR_BY_FLATS = ['D', 'G', 'C', 'F', 'Bb', 'Eb', 'Ab'];

describe('key signatures', () => {
  it.each(GARDNER_MAJOR)('gives %s its %i %s in written order', (key, count, kind, letters) => {
    const { signature, accidental } = keyFacts(key);
    expect(accidental).toBe(kind);
    expect(signature).toHaveLength(count);
    expect(signature.map((name) => name.charAt(0).toLowerCase()).join(' ')).toBe(letters);
    expect(signature.every((name) => name.slice(1) === (kind === 'sharps' ? '#' : 'b'))).toBe(true);
  });

  it.each(MINOR_BY_SHARPS.map((tonic, count) => [`${tonic} minor`, count] as const))(
    'gives %s %i sharps, those of the major key with as many',
    (key, count) => {
      const major = GARDNER_MAJOR.find(([, sharps, kind]) => sharps === count && kind !== 'flats')![0];
      expect(keyFacts(key).signature).toHaveLength(count);
      expect(keyFacts(key).signature).toEqual(keyFacts(major).signature);
    },
  );

  it.each(MINOR_BY_FLATS.map((tonic, index) => [`${tonic} minor`, index + 1] as const))(
    'gives %s %i flats, those of the major key with as many',
    (key, count) => {
      const major = GARDNER_MAJOR.find(([, flats, kind]) => flats === count && kind === 'flats')![0];
      expect(keyFacts(key).signature).toHaveLength(count);
      expect(keyFacts(key).signature).toEqual(keyFacts(major).signature);
    },
  );

  it('offers twelve major and twelve minor keys, none with more than six sharps or flats', () => {
    expect(ALL_KEYS.filter((key) => key.endsWith(' major'))).toHaveLength(12);
    expect(ALL_KEYS.filter((key) => key.endsWith(' minor'))).toHaveLength(12);
    expect(Math.max(...ALL_KEYS.map((key) => keyFacts(key).signature.length))).toBe(6);
  });
});
