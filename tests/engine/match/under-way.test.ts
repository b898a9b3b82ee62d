import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import type { PlayedNote } from '../../../src/engine/listen/index.ts';
import { underWay } from '../../../src/engine/match/index.ts';
import { COSTS, FOLLOWING } from '../../../src/engine/match/costs/index.ts';
import { played } from './simulated.ts';

// What is under way after each note: the chosen exercise from its first notes on, wherever it lies.

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 1 };
const ARPEGGIO: ExerciseChoice = { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 };

const keysOf = (choice: ExerciseChoice): readonly number[] =>
  buildExercise(choice).steps.flatMap(({ notes }) => notes.map(({ midi }) => midi));
const evenly = (keys: readonly number[], fromSec = 1): readonly PlayedNote[] =>
  keys.map((midi, at) => played(fromSec + 0.4 * at, midi));

describe('the chosen exercise under way', () => {
  const keys = keysOf(SCALE);

  it('stands from its third note on, and is whole at its last', () => {
    for (let count = 3; count <= keys.length; count++)
      expect(underWay(evenly(keys.slice(0, count)), SCALE).standing).toMatchObject({
        startSec: 1,
        moments: count,
        isChosen: true,
        isWhole: count === keys.length,
        cost: expect.closeTo(FOLLOWING.begin, 9),
      });
  });

  it.each([
    ['as written', 0],
    ['three octaves lower', -36],
    ['two octaves lower', -24],
    ['an octave lower', -12],
    ['an octave higher', 12],
    ['two octaves higher', 24],
    ['three octaves higher', 36],
    ['a semitone low, as a flat piano is read', -1],
    ['a semitone high', 1],
    ['an octave and a semitone high', 13],
  ])('stands %s', (_, semitones) => {
    const moved = keys.map((key) => key + semitones);
    expect(underWay(evenly(moved), SCALE).standing).toMatchObject({ isChosen: true, isWhole: true });
  });

  it.each<readonly [string, ExerciseChoice]>([
    ['one hand of what needs both', { key: 'D major', form: 'tenths-apart', hands: 'right', octaves: 1 }],
    ['the other hand of it', { key: 'D minor', form: 'contrary-motion', hands: 'left', octaves: 2 }],
    ['another register and rhythm', { ...SCALE, register: -2, notesABeat: 6 }],
    ['other fingers', { ...SCALE, key: 'Ab major', hands: 'left', fingering: { left: 'thumbs-together' } }],
  ])('stands where it is %s', (_, choice) => {
    expect(underWay(evenly(keysOf(choice)), choice).standing).toMatchObject({
      isChosen: true,
      isWhole: true,
    });
  });

  it('is not it a whole tone away: that is the other key’s', () => {
    const { standing } = underWay(evenly(keys.map((key) => key + 2)), SCALE);
    // Found as that scale, faultless, and not as a worse one.
    expect(standing).toMatchObject({
      isChosen: false,
      isWhole: true,
      cost: expect.closeTo(FOLLOWING.begin, 9),
    });
  });

  it('tells its faults in its cost', () => {
    const without = keys.filter((_, step) => step !== 5);
    expect(underWay(evenly(without), SCALE).standing!.cost).toBeCloseTo(FOLLOWING.begin + COSTS.missed, 9);
  });

  it('is none before anything was struck, nor where nothing of it was', () => {
    expect(underWay([], SCALE)).toEqual({ stretches: [], before: [], standing: null });
    expect(underWay(evenly([61]), SCALE).standing?.isChosen ?? false).toBe(false);
  });
});

describe('what came before', () => {
  const scale = keysOf(SCALE);
  const arpeggio = keysOf(ARPEGGIO);

  it('is told apart from what stands', () => {
    const first = evenly(scale);
    const fromSec = first.at(-1)!.timeSec + 2;
    const { standing, before, stretches } = underWay(
      [...first, ...evenly(scale.slice(0, 9), fromSec)],
      SCALE,
    );
    const whole = { startSec: 1, endSec: first.at(-1)!.timeSec, isChosen: true, isWhole: true };
    expect(standing).toMatchObject({ startSec: fromSec, moments: 9, isWhole: false });
    expect(before).toEqual([whole]);
    expect(stretches[0]).toEqual(whole);
  });

  it('is another exercise where another was played', () => {
    const first = evenly(arpeggio);
    const fromSec = first.at(-1)!.timeSec + 2;
    const { before, standing } = underWay([...first, ...evenly(scale, fromSec)], SCALE);
    expect(before).toMatchObject([{ startSec: 1, isChosen: false, isWhole: true }]);
    expect(standing).toMatchObject({ startSec: fromSec, isChosen: true, isWhole: true });
  });
});

describe('with nothing chosen', () => {
  it('any exercise of the set stands from when enough of its keys were struck', () => {
    const keys = keysOf(ARPEGGIO);
    expect(underWay(evenly(keys.slice(0, 1)), null).standing).toBeNull();
    const { standing } = underWay(evenly(keys), null);
    expect(standing).toMatchObject({ startSec: 1, moments: keys.length, isChosen: false, isWhole: true });
  });
});
