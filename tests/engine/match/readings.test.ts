import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { LEAST_LIKELY, likelyReadings, nearestReadings } from '../../../src/engine/match/index.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 1 };
const OTHER: ExerciseChoice = { ...SCALE, key: 'A major' };
const alternatives = [
  { choice: SCALE, fit: 0.8 },
  { choice: OTHER, fit: 0 },
];

describe('what playing may be', () => {
  it.each([
    [
      'its exercise first where it was told',
      { choice: OTHER, confidence: 0.9, alternatives },
      [OTHER, SCALE],
    ],
    [
      'the likeliest first where it cannot be told',
      { choice: null, confidence: LEAST_LIKELY, alternatives },
      [SCALE],
    ],
    [
      'nothing where it is hardly any exercise',
      { choice: null, confidence: LEAST_LIKELY - 0.01, alternatives },
      [],
    ],
    ['nothing where nothing explains it', { choice: null, confidence: 0, alternatives: [] }, []],
  ])('is %s', (_, recognition, readings) => {
    expect(likelyReadings({ octaveShift: 0, ...recognition })).toEqual(readings);
  });
});

describe('what playing comes nearest to', () => {
  const near = (...fits: readonly number[]): readonly string[] =>
    nearestReadings({
      choice: null,
      confidence: 0,
      octaveShift: 0,
      alternatives: fits.map((fit, at) => ({ choice: { ...SCALE, key: `${'CDEFG'[at]!} major` }, fit })),
    }).map(({ key }) => key[0]!);

  it('is what explains two fifths of it or more, three at most', () => {
    expect(near(0.7, 0.4, 0.39)).toEqual(['C', 'D']);
    expect(near(0.3, 0.6, 0.5, 0.45, 0.45)).toEqual(['D', 'E', 'F']);
    expect(near()).toEqual([]);
  });
});
