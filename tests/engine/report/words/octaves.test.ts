import { describe, expect, it } from 'vitest';
import type { ExerciseChoice, Locale } from '../../../../src/engine/exercise/index.ts';
import { tellWords } from '../../../../src/engine/report/index.ts';
import { tell } from './scenes.ts';
import type { Change } from './scenes.ts';

const A: ExerciseChoice = { key: 'A major', form: 'arpeggio', hands: 'right', octaves: 2 };
const ENGLISH: Locale = { language: 'en', naming: 'letters' };
const GERMAN: Locale = { language: 'de', naming: 'german' };

const at =
  (steps: readonly number[], change: Change) =>
  (step: number): Change =>
    steps.includes(step) ? change : {};

/** A4 C♯5 E5 A5 C♯6 E6 A6 and back: C♯ and E come twice each way, an octave apart. */
describe('notes of one name in two octaves', () => {
  it.each([
    [
      'missing',
      { choice: A, change: at([1, 4], { missed: {} }) },
      'C♯ going up in the lower octave and C♯ going up in the upper octave',
      'Cis aufwärts in der unteren Oktave und Cis aufwärts in der oberen Oktave',
    ],
    [
      'struck twice',
      { choice: A, change: at([2, 5], { twice: true }) },
      'E is struck twice going up in the lower octave, and one more',
      'E ist aufwärts in der unteren Oktave zweimal angeschlagen',
    ],
    [
      'late',
      { choice: { ...A, form: 'scale' }, change: at([3, 10], { lateMs: 150 }) },
      'going up to D in the',
      'aufwärts zu D in der',
    ],
  ] as const)('%s are told apart', (_, playing, english, german) => {
    const { words } = tell(playing);
    const said = [ENGLISH, GERMAN].map((locale) => tellWords(words, locale));
    expect(said[0]!.verdict).toContain(english);
    expect(said[1]!.verdict).toContain(german);
    for (const { list } of said) {
      const lines = list.map(({ text }) => text);
      expect(lines.length).toBeGreaterThan(1);
      expect(new Set(lines).size).toBe(lines.length);
    }
  });

  it('are called by their name alone where one of them is not right', () => {
    expect(tell({ choice: A, change: at([1], { missed: {} }) }).words.verdict).not.toContain('octave');
  });
});
