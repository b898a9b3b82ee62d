import { describe, expect, it } from 'vitest';
import { ALL_KEYS, buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, Hand, Hands } from '../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { heardOf, played } from './simulated.ts';

/** Octaves by which each hand lies above where it is written. */
type Moved = Readonly<Record<Hand, number>>;

const OCTAVES = [-2, -1, 0, 1, 2];
const [LOWEST_KEY, HIGHEST_KEY] = [21, 108];
const RUNS = (['arpeggio', 'scale'] as const).flatMap((form) =>
  [1, 2, 3, 4].map((octaves) => ({ form, octaves })),
);
const CHORDS = (['triads', 'broken-triads', 'progression'] as const).map((form) => ({ form, octaves: 1 }));
/** Every form and length, each in another key than the time before. */
const choicesOf = (hands: Hands, round: number): readonly ExerciseChoice[] =>
  [...RUNS, ...CHORDS].map((kind, index) => ({
    key: ALL_KEYS[(7 * index + 5 * round) % ALL_KEYS.length]!,
    hands,
    ...kind,
  }));

/** The exercise as written, each hand moved, note for note and evenly. */
function playing(choice: ExerciseChoice, moved: Moved) {
  return buildExercise(choice).steps.flatMap(({ beat, notes }) =>
    notes.map(({ midi, hand }) => played(1 + beat * 0.8, midi + 12 * moved[hand])),
  );
}

/**
 * How the shift is to be told. The octave that both hands share comes first, then what one lies beyond it. A left hand that lies over
 * the right sounds like hands in their places, since both play the same notes an octave apart: it is told as those.
 */
function remarksOn(choice: ExerciseChoice, moved: Moved) {
  if (choice.hands !== 'together') return octaves(moved[choice.hands]);
  const crossed = moved.left > moved.right + 1;
  const left = crossed ? moved.right + 1 : moved.left;
  const right = crossed ? moved.left - 1 : moved.right;
  const shared = left * right > 0 ? Math.sign(left) * Math.min(Math.abs(left), Math.abs(right)) : 0;
  return [...octaves(shared), ...octaves(left - shared, 'left'), ...octaves(right - shared, 'right')];
}

function octaves(octaveShift: number, hand?: Hand) {
  if (octaveShift === 0) return [];
  return [{ kind: 'other-octave', octaveShift, ...(hand !== undefined && { hand }) }];
}

function expectAllRight(choice: ExerciseChoice, moved: Moved) {
  const notes = playing(choice, moved);
  if (notes.some(({ midi }) => midi < LOWEST_KEY || midi > HIGHEST_KEY)) return;
  const alignment = matchNotes(heardOf(notes), buildExercise(choice));
  const right = alignment.matched.filter(({ verdict }) => verdict === 'correct').length;
  const where = `${choice.key} ${choice.form}, ${choice.octaves} octaves, ${choice.hands}, moved ${moved.left} and ${moved.right}`;
  expect(`${right} of ${notes.length}`, where).toBe(`${notes.length} of ${notes.length}`);
  expect(alignment.extras, where).toEqual([]);
  expect(alignment.remarks, where).toEqual(remarksOn(choice, moved));
  expect(alignment.betterFit, where).toBeUndefined();
}

describe('note for note as written, in any octave, every note is right and the octave is told', () => {
  it.each(OCTAVES)('one hand %i octaves from its place, every form and length', (by) => {
    for (const hands of ['left', 'right'] as const)
      for (const choice of choicesOf(hands, by + 2)) expectAllRight(choice, { left: by, right: by });
  });

  it.each(OCTAVES.flatMap((left) => OCTAVES.map((right) => [left, right] as const)))(
    'both hands, the left %i and the right %i octaves from their places, every form and length',
    (left, right) => {
      for (const choice of choicesOf('together', 5 * left + right + 12))
        expectAllRight(choice, { left, right });
    },
  );
});
