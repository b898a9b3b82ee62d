import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import {
  LEAST_CONFIDENCE,
  LEAST_LIKELY,
  matchNotes,
  recogniseFrom,
} from '../../../src/engine/match/index.ts';
import { octaveHigher } from '../../../src/engine/match/align/index.ts';
import { COSTS, FOLLOWING } from '../../../src/engine/match/costs/index.ts';
import { EXTRA_KIND, HAND_LIKELIHOOD } from '../../../src/engine/match/types.ts';
import type { ExtraKind } from '../../../src/engine/match/types.ts';
import { heardOf, played } from './simulated.ts';

// What recognition tells besides the exercise: how much is explained, and what else it may be. Worked out by hand.

const ARPEGGIO: ExerciseChoice = { key: 'F major', form: 'arpeggio', hands: 'right', octaves: 2 };
const KEYS = buildExercise(ARPEGGIO).steps.map(({ notes }) => notes[0]!.midi);
const tuned = (cents: number) => ({ tuning: { cents, a4Hz: 440, sdCents: 1, strays: [] } });
const evenly = (keys: readonly number[], fromSec = 1) =>
  keys.map((midi, at) => played(fromSec + 0.4 * at, midi));

describe('what it may have been', () => {
  // So sharp, F may as well be F sharp on a flat piano: neither is named, both are told, and how much each explains.
  const OPEN = tuned(20.5);
  const fitsOf = (keys: readonly (readonly number[])[]): readonly number[] => {
    const notes = keys.flatMap((some, at) => evenly(some, 1 + 10 * at));
    const { choice, alternatives } = recogniseFrom(heardOf(notes, OPEN));
    expect(choice).toBeNull();
    expect(alternatives.slice(0, 2).map((one) => one.choice)).toEqual([
      ARPEGGIO,
      { ...ARPEGGIO, key: 'F# major' },
    ]);
    return alternatives.slice(0, 2).map(({ fit }) => fit);
  };
  const without = KEYS.filter((_, step) => step !== 4);

  it.each([
    ['all of it', [KEYS], 1],
    ['all but one note missed', [without], 1 - COSTS.missed / 13],
    ['as much where it came twice, of the notes of both', [without, KEYS], 1 - COSTS.missed / 26],
    [
      'less by what lies outside it, of all that was heard',
      [KEYS, [50, 61, 50, 61]],
      1 - (4 * FOLLOWING.idle) / 17,
    ],
  ])('explains %s', (_, keys, fit) => {
    expect(fitsOf(keys)).toEqual([expect.closeTo(fit, 9), expect.closeTo(fit, 9)]);
  });

  it.each([0, 3])(
    'on a piano in tune, %i cents sharp, is named once, and four others told, in no key beside',
    (cents) => {
      const { choice, confidence, alternatives } = recogniseFrom(heardOf(evenly(KEYS), tuned(cents)));
      expect(choice).toEqual(ARPEGGIO);
      expect(confidence).toBeGreaterThan(0.98);
      expect(confidence).toBeLessThan(1);
      expect(alternatives).toHaveLength(4);
      expect(alternatives.filter((one) => !one.choice.key.startsWith('F m'))).toEqual([]);
      for (const { fit } of alternatives) {
        expect(fit).toBeGreaterThan(0);
        expect(fit).toBeLessThan(1);
      }
    },
  );

  it('is nothing in silence', () => {
    const nothing = { choice: null, confidence: 0, octaveShift: 0, alternatives: [] };
    expect(recogniseFrom(heardOf([]))).toEqual(nothing);
  });

  it('is other playing where it is less likely than three in ten to be any exercise', () => {
    expect(LEAST_LIKELY).toBe(0.3);
    expect(LEAST_CONFIDENCE).toBe(0.6);
  });
});

describe('an alignment an octave higher', () => {
  it('has each hand an octave above where it was found', () => {
    const choice = { key: 'D major', form: 'triads', hands: 'together', octaves: 1 } as const;
    const exercise = buildExercise(choice);
    const notes = exercise.steps.flatMap(({ step, notes: keys }) =>
      keys.map(({ midi, hand }) => played(1 + step, hand === 'left' ? midi - 12 : midi)),
    );
    const heard = heardOf(notes);
    const found = matchNotes(heard, exercise);
    const higher = octaveHigher(heard, found);
    expect(higher.matched.map(({ expected }) => expected.midi).sort()).toEqual(
      exercise.steps
        .flatMap(({ notes: keys }) => keys.map(({ midi, hand }) => (hand === 'left' ? midi : midi + 12)))
        .sort(),
    );
  });
});

it('every kind of a note too many has its word in the schema', () => {
  for (const kind of ['slip', 'repeat', 'restart', 'other'] satisfies ExtraKind[])
    expect(v.is(EXTRA_KIND, kind)).toBe(true);
});

it.each([
  [0, 1, true],
  [1, 0, true],
  [0.4, 0.6, true],
  [-0.1, 1, false],
  [0, 1.1, false],
])('a likelihood of hands lies within 0 and 1: %f and %f', (left, right, holds) => {
  expect(v.is(HAND_LIKELIHOOD, { left, right })).toBe(holds);
});
