import { expect, it } from 'vitest';
import { assess } from '../../../src/engine/assess.ts';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, Form, Hand } from '../../../src/engine/exercise/index.ts';
import { chordAttemptOf } from '../../bench/chord-attempts.ts';
import { render } from '../../support/render.ts';
import type { HomeKnobs, StudentKnobs } from '../../support/render.ts';

interface Slip {
  readonly key: ExerciseChoice['key'];
  readonly form: Form;
  readonly step: number;
  readonly hand: Hand;
  /** the hand's note from below, and semitones by which it is missed */
  readonly note: number;
  readonly by: number;
  readonly student?: Partial<StudentKnobs>;
  readonly home?: Partial<HomeKnobs>;
}

// Both hands on the development piano (see tests/support); each slip is of a kind that students make (common practice, no source).
it.each<[string, Slip]>([
  [
    'the bass a semitone off, which sounds on its own octave too',
    { key: 'G minor', form: 'triads', step: 4, hand: 'left', note: 0, by: -1, student: { octaveShift: -1 } },
  ],
  [
    'an inner note of a chord an octave lower',
    { key: 'D major', form: 'triads', step: 2, hand: 'left', note: 1, by: -12 },
  ],
  [
    'a key beside a note that the other hand plays an octave below',
    { key: 'A major', form: 'triads', step: 3, hand: 'right', note: 1, by: 1 },
  ],
  [
    'a key beside a common tone that rings on from the chord before',
    {
      key: 'C major',
      form: 'progression',
      step: 1,
      hand: 'right',
      note: 0,
      by: -1,
      student: { overlapMs: 250 },
    },
  ],
])('%s is one wrong note, in its place', async (_, { key, form, step, hand, note, by, student, home }) => {
  const exercise: ExerciseChoice = { key, form, hands: 'together', octaves: 1 };
  const { notes } = buildExercise(exercise).steps[step]!;
  const at = notes.findIndex((one) => one.hand === hand) + note;
  const midi = notes[at]!.midi + by;
  const mistakes = [{ kind: 'wrong', step, note: at, midi }] as const;
  const sound = await render({
    seed: 27,
    piano: 'dev',
    exercise,
    student: { bpm: 60, ...student, mistakes },
    home: { phone: true, ...home },
  });
  const assessment = assess(sound, exercise);
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  const { report } = assessment;
  const shift = 12 * (student?.octaveShift ?? 0);
  const told = report.notes.flatMap((one) =>
    one.verdict === 'correct' ? [] : [[one.verdict, one.step, one.hand, one.midi]],
  );
  expect(told).toEqual([['wrong', step, hand, midi + shift]]);
  expect(report.missed).toEqual([]);
});

it('a lower key that seems to sound again where the upper hand comes late was not struck in place of its octave', async () => {
  const { spec } = chordAttemptOf('both-hands', 'dev', 1);
  const assessment = assess(await render(spec), spec.exercise);
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  const { notes, missed } = assessment.report;
  expect(notes.filter(({ verdict }) => verdict !== 'correct')).toEqual([]);
  expect(missed).toEqual([]);
});
