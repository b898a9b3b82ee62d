import { describe, expect, it } from 'vitest';
import { keyFacts } from '../../../src/engine/index.ts';
import { keyLines, signatureWords } from '../../../src/ui/prepare/key-lines.ts';
import { keyGroups } from '../../../src/ui/prepare/options.ts';

describe('what there is to know about a key', () => {
  // Key signatures: any rudiments of music, e.g. AB Guide to Music Theory I (from memory).
  it.each([
    ['C major', 'no sharps or flats'],
    ['A major', 'three sharps: F♯ C♯ G♯'],
    ['F major', 'one flat: B♭'],
    ['F minor', 'four flats: B♭ E♭ A♭ D♭'],
  ])('%s has %s', (key, words) => {
    expect(signatureWords(keyFacts(key))).toBe(words);
  });

  it('has three scales in minor, with the raised leading note only where it belongs', () => {
    const words = new Map(keyLines(keyFacts('A minor')).map(({ term, words: text }) => [term, text]));
    expect(words.get('Natural scale')).toBe('A B C D E F G');
    expect(words.get('Harmonic scale')).toBe('A B C D E F G♯');
    expect(words.get('Primary chords')).toMatch(/V7\u2002E G♯ B D/);
  });
});

it('offers the twelve major and the twelve minor keys round the circle of fifths', () => {
  expect(keyGroups().map((group) => group.options.length)).toEqual([12, 12]);
  expect(
    keyGroups()[0]!
      .options.slice(0, 4)
      .map((key) => key.label),
  ).toEqual(['C major', 'G major', 'D major', 'A major']);
});
