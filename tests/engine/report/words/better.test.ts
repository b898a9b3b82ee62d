import { expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../../src/engine/exercise/index.ts';
import { improvement } from '../../../../src/engine/report/words/better.ts';
import type { Scene } from '../../../../src/engine/report/words/scene.ts';
import { tell } from './scenes.ts';

const SCALE: ExerciseChoice = { key: 'A major', form: 'scale', hands: 'right', octaves: 1 };
const WRONG = { 2: 60, 4: 63, 6: 67 } as const;
/** A scale in which the first so many of these notes are wrong. */
const withWrong = (count: number) =>
  tell({
    choice: SCALE,
    change: (step) => {
      const midi = Object.entries(WRONG)
        .slice(0, count)
        .find(([at]) => Number(at) === step)?.[1];
      return midi === undefined ? {} : { wrong: { midi } };
    },
  });

it.each([
  [3, 0, { figure: 'notes', before: 3 }],
  [1, 0, { figure: 'notes', before: 1 }],
  [3, 1, null],
  [0, 0, null],
])(
  'notes are better than last time only where none is wrong any more: %i, then %i',
  (before, now, better) => {
    const scene = { earlier: [withWrong(before)], report: withWrong(now) } as unknown as Scene;
    expect(improvement(scene)).toEqual(better);
  },
);
