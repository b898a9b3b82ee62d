import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/engine/assess.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { NO_MISTAKES, render } from '../../support/render.ts';

const BOTH: ExerciseChoice = { key: 'Ab major', form: 'arpeggio', hands: 'together', octaves: 2 };

/*
 * Counting aloud, 3 dB under the playing (development piano, see tests/support). The blind ear takes one spoken vowel or more of each of
 * these attempts surely for a key.
 */
describe('both hands, counting aloud', () => {
  it.each([1, 3, 6])('a spoken vowel is no key too many: attempt %i', async (seed) => {
    const sound = await render({
      seed,
      piano: 'dev',
      exercise: BOTH,
      student: { bpm: 40, mistakes: NO_MISTAKES },
      home: { noises: [{ kind: 'speech', belowDb: 3 }] },
    });
    const assessment = assess(sound, BOTH);
    if (assessment.kind !== 'report') throw new Error(assessment.kind);
    const { alignment, heard, report } = assessment;
    expect(heard.notes.length).toBeGreaterThan(alignment.matched.length);
    expect(report.notes.filter(({ verdict }) => verdict !== 'correct')).toEqual([]);
    expect(report.missed).toEqual([]);
  });
});
