import { expect, it } from 'vitest';
import { assess } from '../../../src/engine/assess.ts';
import type { ExerciseChoice, Hands } from '../../../src/engine/exercise/index.ts';
import { AIM_ROWS, aimAttemptOf } from '../../bench/aim-attempts.ts';
import { NO_MISTAKES, render } from '../../support/render.ts';

/*
 * Counting aloud, 3 dB under the playing (development piano, see tests/support). The blind ear takes spoken vowels of each of these attempts
 * for keys, two to eight of them.
 */
it.each<[Hands, number]>([
  ['together', 1],
  ['together', 3],
  ['together', 7],
  ['left', 1],
  ['left', 10],
  ['left', 21],
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
  const { heard, report } = assessment;
  const invented = heard.notes.filter(
    ({ midi, timeSec }) =>
      !sound.truth.notes.some((one) => one.midi === midi && Math.abs(one.timeSec - timeSec) < 0.1),
  );
  expect(invented.length).toBeGreaterThan(1);
  expect(report.notes.filter(({ verdict }) => verdict !== 'correct')).toEqual([]);
  expect(report.missed).toEqual([]);
});

// As loud as the playing, lines of the left hand and the right; the closer look believes in the second and third of these vowels, too.
it.each([
  ['in place of the last note, of which the blind ear was less sure', 4],
  ['beside the last key but one: it glides, all partials together', 22],
  ['on the key to come, which is not struck twice: its first blow glides', 27],
])('a vowel is no fault: %s', async (_, turn) => {
  const rows = Object.keys(AIM_ROWS);
  const { spec } = aimAttemptOf('dev', rows.indexOf('counting aloud as loud, one hand') + turn * rows.length);
  const assessment = assess(await render(spec), spec.exercise);
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  const { notes, missed, unsure } = assessment.report;
  expect(notes.filter(({ verdict }) => verdict !== 'correct')).toEqual([]);
  expect([missed, unsure]).toEqual([[], []]);
});
