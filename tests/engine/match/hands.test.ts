import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, ExpectedNote } from '../../../src/engine/exercise/index.ts';
import type { PlayedNote } from '../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { heardOf, played } from './simulated.ts';

const STEP_SEC = 0.5;

/** What a hand does with an expected note: when (s after the step's own time) and which key; null: it does nothing. */
type Doing = (note: ExpectedNote, step: number, at: number) => { late?: number; midi?: number } | null;

/** The exercise at an even pace, each note as `doing` says; `at` counts the notes of the hand's chord from below. */
function playing(choice: ExerciseChoice, doing: Doing): PlayedNote[] {
  return buildExercise(choice).steps.flatMap(({ step, notes }) =>
    notes.flatMap((note) => {
      const at = notes.filter((other) => other.hand === note.hand).indexOf(note);
      const done = doing(note, step, at);
      return done === null ? [] : [played(1 + step * STEP_SEC + (done.late ?? 0), done.midi ?? note.midi)];
    }),
  );
}

/** "verdict hand step" of all that is not right, and the extras. */
function told(choice: ExerciseChoice, doing: Doing) {
  const alignment = matchNotes(heardOf(playing(choice, doing)), buildExercise(choice));
  return {
    notRight: alignment.matched
      .filter((note) => note.verdict !== 'correct')
      .map(({ verdict, expected, step }) => `${verdict} ${expected.hand} ${step}`),
    extras: alignment.extras.map((extra) => `${extra.kind} ${extra.step}`),
    remarks: alignment.remarks,
  };
}

const ALL_RIGHT = { notRight: [], extras: [], remarks: [] };
const FORMS = ['triads', 'progression', 'arpeggio', 'scale', 'broken-triads'] as const;
const together = (form: ExerciseChoice['form']): ExerciseChoice => ({
  key: 'D major',
  form,
  hands: 'together',
  octaves: 1,
});
const choices = FORMS.map((form) => [form, together(form)] as const);
const chords = FORMS.slice(0, 2).flatMap((form) =>
  (['left', 'right', 'together'] as const).map(
    (hands) => [`${form}, ${hands}`, { ...together(form), hands }] as const,
  ),
);

describe('chords not struck as one', () => {
  it.each(chords)('rolled upward over a fifth of a step are right: %s', (_, choice) => {
    expect(told(choice, (_note, _step, at) => ({ late: (at * STEP_SEC) / 10 }))).toEqual(ALL_RIGHT);
  });

  it.each(chords)('rolled downward over two fifths of a step are right: %s', (_, choice) => {
    expect(told(choice, (_note, _step, at) => ({ late: ((2 - at) * STEP_SEC) / 5 }))).toEqual(ALL_RIGHT);
  });

  it.each(chords)('broken over most of a step are right: %s', (_, choice) => {
    expect(told(choice, (_note, _step, at) => ({ late: at * STEP_SEC * 0.3 }))).toEqual(ALL_RIGHT);
  });

  // Their notes look like steps of their own: the beat is guessed a second time, from the length of the whole.
  it.each(chords)('broken over most of a slow step, from either end, are right: %s', (_, choice) => {
    for (const stepSec of [0.5, 0.8, 1.5, 2])
      for (const from of [0, 2])
        expect(
          told(choice, (_note, step, at) => ({
            late: step * (stepSec - STEP_SEC) + 0.35 * Math.abs(at - from) * stepSec,
          })),
          `${stepSec} s a step, from note ${from}`,
        ).toEqual(ALL_RIGHT);
  });

  it.each(['left', 'right'] as const)(
    'of four notes, broken over six tenths of a step, are right: %s',
    (hands) => {
      const choice: ExerciseChoice = { ...together('four-note-chords'), hands };
      expect(told(choice, (_note, _step, at) => ({ late: 0.2 * at * STEP_SEC }))).toEqual(ALL_RIGHT);
      expect(told(choice, (_note, step, at) => ({ late: (step + 0.4 * at) * STEP_SEC }))).toEqual(ALL_RIGHT);
    },
  );
});

describe('hands that do not fall together', () => {
  it.each(choices)('left half a step after the right: every note right: %s', (_, choice) => {
    expect(told(choice, ({ hand }) => ({ late: hand === 'left' ? STEP_SEC / 2 : 0 }))).toEqual(ALL_RIGHT);
  });

  it.each(choices)('right half a step after the left: every note right: %s', (_, choice) => {
    expect(told(choice, ({ hand }) => ({ late: hand === 'right' ? STEP_SEC / 2 : 0 }))).toEqual(ALL_RIGHT);
  });

  it.each(choices)('one hand that hurries until it is a step ahead: every note right: %s', (_, choice) => {
    const hurrying: Doing = ({ hand }, step) => ({
      late: hand === 'right' ? -STEP_SEC * Math.min(1, step / 3) : 0,
    });
    expect(told(choice, hurrying)).toMatchObject({ notRight: [], extras: [] });
  });

  it.each(choices)('one hand that falls back by a step: every note right: %s', (_, choice) => {
    const dragging: Doing = ({ hand }, step) => ({
      late: hand === 'left' ? STEP_SEC * Math.min(1, step / 3) : 0,
    });
    expect(told(choice, dragging)).toMatchObject({ notRight: [], extras: [] });
  });

  it.each(choices)('one hand a whole step behind: every note right: %s', (_, choice) => {
    expect(told(choice, ({ hand }) => ({ late: hand === 'left' ? STEP_SEC : 0 }))).toMatchObject({
      notRight: [],
      extras: [],
    });
  });
});

describe('one hand that does something else', () => {
  it.each(choices)('the left hand missing: the right hand stays right: %s', (_, choice) => {
    const { notRight, extras } = told(choice, ({ hand }) => (hand === 'left' ? null : {}));
    expect(extras).toEqual([]);
    expect(notRight.filter((text) => text.includes('right'))).toEqual([]);
  });

  it.each(choices)('the right hand missing: the left hand stays right: %s', (_, choice) => {
    const { notRight, extras } = told(choice, ({ hand }) => (hand === 'right' ? null : {}));
    expect(extras).toEqual([]);
    expect(notRight.filter((text) => text.includes('left'))).toEqual([]);
  });

  it.each(choices)(
    'the left hand a semitone too low throughout: the right hand stays right: %s',
    (_, choice) => {
      const { notRight } = told(choice, ({ hand, midi }) => ({ midi: hand === 'left' ? midi - 1 : midi }));
      expect(notRight.filter((text) => text.includes('right'))).toEqual([]);
    },
  );

  it.each(choices)('the left hand stops half-way: the right hand stays right: %s', (_, choice) => {
    const half = buildExercise(choice).steps.length / 2;
    const { notRight, extras } = told(choice, ({ hand }, step) =>
      hand === 'left' && step > half ? null : {},
    );
    expect(extras).toEqual([]);
    expect(notRight.filter((text) => text.includes('right'))).toEqual([]);
  });

  it.each([
    ['left', -12],
    ['right', 12],
    ['left', -24],
  ] as const)(
    'the %s hand %i semitones off its place: every note right, with a remark',
    (hand, semitones) => {
      for (const [, choice] of choices) {
        const { notRight, extras, remarks } = told(choice, (note) => ({
          midi: note.midi + (note.hand === hand ? semitones : 0),
        }));
        expect(notRight, choice.form).toEqual([]);
        expect(extras).toEqual([]);
        expect(remarks).toEqual([{ kind: 'other-octave', octaveShift: semitones / 12, hand }]);
      }
    },
  );
});
