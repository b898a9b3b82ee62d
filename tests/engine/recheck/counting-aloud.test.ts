import { expect, it } from 'vitest';
import { assess } from '../../../src/engine/assess.ts';
import type { ExerciseChoice, Hands } from '../../../src/engine/exercise/index.ts';
import { NO_MISTAKES, render } from '../../support/render.ts';

/*
 * Counting aloud, 3 dB under the playing (development piano, see tests/support). The blind ear takes spoken vowels of each of these attempts
 * for keys, two to twelve of them.
 */
it.each<[Hands, number]>([
  ['together', 1],
  ['together', 3],
  ['together', 7],
  ['left', 1],
  ['left', 3],
  ['left', 9],
])('hands %s: a spoken vowel is no key too many (attempt %i)', async (hands, seed) => {
  const exercise: ExerciseChoice = { key: 'Ab major', form: 'arpeggio', hands, octaves: 2 };
  const sound = await render({
    seed,
    piano: 'dev',
    exercise,
    student: { bpm: 40, mistakes: NO_MISTAKES },
    home: { noises: [{ kind: 'speech', belowDb: 3 }] },
  });
  const assessment = assess(sound, exercise);
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  const { alignment, heard, report } = assessment;
  expect(heard.notes.length).toBeGreaterThan(alignment.matched.length + 1);
  expect(report.notes.filter(({ verdict }) => verdict !== 'correct')).toEqual([]);
  expect(report.missed).toEqual([]);
});
