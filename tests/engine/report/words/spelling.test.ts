import { describe, expect, it } from 'vitest';
import { buildExercise, keyFacts } from '../../../../src/engine/exercise/index.ts';
import { spellPlayed, spellWithOctave } from '../../../../src/engine/report/words/spelling.ts';

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

/** Sharps going up and flats coming down: common practice, no source. */
describe('a wrong key', () => {
  it.each([
    ['chromatic', 'C major', 'up, where sharps are written', 2, 61, 'C#'],
    ['chromatic', 'C major', 'down, where flats are', 22, 61, 'Db'],
    [
      'arpeggio',
      'C major',
      'by the letter of the right one, where the exercise does not write it',
      1,
      63,
      'Eb',
    ],
    ['scale', 'D major', 'by the right letter without its sign', 2, 65, 'F'],
  ] as const)('is called as the exercise writes it: %s in %s, %s', (form, key, _, step, midi, name) => {
    const exercise = buildExercise({ form, key, hands: 'right', octaves: 1 });
    expect(spellPlayed(exercise, step, midi, exercise.steps[step]!.notes[0]!)).toBe(name);
  });
});
