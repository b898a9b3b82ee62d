import { expect, it } from 'vitest';
import { assess } from '../../../src/engine/assess.ts';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, Form, Hand } from '../../../src/engine/exercise/index.ts';
import { attemptOf } from '../../bench/attempts.ts';
import { chordAttemptOf } from '../../bench/chord-attempts.ts';
import { NO_MISTAKES, render } from '../../support/render.ts';
import type { HomeKnobs, StudentKnobs } from '../../support/render.ts';

type Key = ExerciseChoice['key'];

interface Slip {
  readonly key: Key;
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

it.each<[Key, number, number, number]>([
  ['A major', 27, 3, 1],
  ['B major', 27, 3, 1],
  ['C major', 31, 2, 2],
])(
  'a key caught beside a right one in a chord of both hands stands in place of none: %s',
  async (key, seed, step, note) => {
    const exercise: ExerciseChoice = { key, form: 'triads', hands: 'together', octaves: 1 };
    const { notes } = buildExercise(exercise).steps[step]!;
    const at = notes.findIndex(({ hand }) => hand === 'right') + note;
    const midi = notes[at]!.midi + 1;
    const mistakes = [{ kind: 'slip', step, note: at, midi }] as const;
    const sound = await render({
      seed,
      piano: 'dev',
      exercise,
      student: { bpm: 60, mistakes },
      home: { phone: true },
    });
    const assessment = assess(sound, exercise);
    if (assessment.kind !== 'report') throw new Error(assessment.kind);
    const { report } = assessment;
    const told = report.notes.filter(({ verdict }) => verdict !== 'correct');
    // The caught key is told, or nothing is.
    expect(told.filter((one) => one.verdict !== 'extra' || one.midi !== midi)).toEqual([]);
    expect(report.missed).toEqual([]);
  },
);

it.each([1, 7, 12, 13])(
  'keys caught with right ones of a line are told, of which the first listening is not sure (attempt %i)',
  async (index) => {
    const { spec } = attemptOf('standard', 'dev', index);
    const sound = await render({
      ...spec,
      student: { ...spec.student, mistakes: { ...NO_MISTAKES, slips: 2 } },
    });
    const assessment = assess(sound, spec.exercise);
    if (assessment.kind !== 'report') throw new Error(assessment.kind);
    const told = assessment.report.notes.filter(({ verdict }) => verdict !== 'correct');
    expect(told.map(({ extraKind }) => extraKind)).toEqual(['slip', 'slip']);
    const caught = sound.truth.notes.filter(({ verdict }) => verdict === 'extra');
    told.forEach(({ timeSec }, at) => expect(Math.abs(timeSec - caught[at]!.timeSec)).toBeLessThan(0.03));
  },
);

it('a lower key that seems to sound again where the upper hand comes late was not struck in place of its octave', async () => {
  const { spec } = chordAttemptOf('both-hands', 'dev', 1);
  const assessment = assess(await render(spec), spec.exercise);
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  const { notes, missed } = assessment.report;
  expect(notes.filter(({ verdict }) => verdict !== 'correct')).toEqual([]);
  expect(missed).toEqual([]);
});
