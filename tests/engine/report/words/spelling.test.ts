import { describe, expect, it } from 'vitest';
import { keyFacts } from '../../../../src/engine/exercise/index.ts';
import { spellWithOctave } from '../../../../src/engine/report/words/spelling.ts';

/** Scientific pitch notation: the octave is the letter's own, so that C♭4 sounds as B3 and B♯3 as C4 (Young, JASA 11, 1939). */
describe('a key with its octave', () => {
  it.each([
    ['C major', 60, 'C4'],
    ['C major', 59, 'B3'],
    ['Gb major', 59, 'Cb4'],
    ['Gb major', 58, 'Bb3'],
    ['C# minor', 60, 'B#3'],
    ['C# minor', 61, 'C#4'],
    ['G# minor', 67, 'F##4'],
    ['A minor', 21, 'A0'],
    ['A minor', 108, 'C8'],
  ] as const)('in %s: %i is %s', (key, midi, name) => {
    expect(spellWithOctave(keyFacts(key), midi)).toBe(name);
  });
});
