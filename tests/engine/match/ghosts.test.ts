import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import type { PlayedNote } from '../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { heardOf, played } from './simulated.ts';

// The triads of C major with both hands; the first chord is C3 E3 G3 and C4 E4 G4.
const TRIADS: ExerciseChoice = { key: 'C major', form: 'triads', hands: 'together', octaves: 1 };

/** The exercise as written, one step a second from 1 s on, without the notes `absent` ("step midi"), and these besides. */
function told(more: readonly PlayedNote[], absent: readonly string[] = []) {
  const exercise = buildExercise(TRIADS);
  const notes = exercise.steps.flatMap(({ step, notes: expected }) =>
    expected
      .filter(({ midi }) => !absent.includes(`${step} ${midi}`))
      .map(({ midi }) => played(1 + step, midi)),
  );
  const alignment = matchNotes(heardOf([...notes, ...more]), exercise);
  return {
    notRight: alignment.matched
      .filter(({ verdict }) => verdict !== 'correct')
      .map(({ verdict, step, expected }) => `${verdict} ${step} ${expected.midi}`),
    extras: alignment.extras.map(({ kind, step }) => `${kind} ${step}`),
  };
}

describe('findings that other notes explain', () => {
  it.each([
    ['an octave over a note', played(1.02, 76)],
    ['a twelfth over a note', played(1, 74)],
    ['two octaves over a note', played(0.99, 84)],
    ['an octave under a note', played(1.03, 36)],
  ])('%s of the same chord is no extra note', (_, ghost) => {
    expect(told([ghost])).toEqual({ notRight: [], extras: [] });
  });

  it('the sixth partial of the left hand, where the right one could reach it, is no extra note', () => {
    const exercise = buildExercise({ key: 'C major', form: 'tenths-apart', hands: 'together', octaves: 1 });
    const notes = exercise.steps.flatMap(({ step, notes: keys }) =>
      keys.map(({ midi }) => played(1 + step, midi)),
    );
    const left = Math.min(...exercise.steps[0]!.notes.map(({ midi }) => midi));
    const extras = (sec: number) =>
      matchNotes(heardOf([...notes, played(1 + sec, left + 31)]), exercise).extras.length;
    expect(extras(0.02)).toBe(0);
    expect(extras(0.5)).toBe(1);
  });

  it('a chord that is rolled has its ghosts while it is rolled', () => {
    const rolled = [60, 64, 67].map((midi, at) => played(1 + 0.08 * at, midi));
    const absent = ['0 60', '0 64', '0 67'];
    expect(told([...rolled, played(1.15, 36)], absent)).toEqual({ notRight: [], extras: [] });
  });

  it('the same key again, much softer, is its own tone', () => {
    expect(told([played(1.5, 64, { levelDb: -36 })])).toEqual({ notRight: [], extras: [] });
  });

  it('the same key again, as loud, is a repeat', () => {
    expect(told([played(1.5, 64, { levelDb: -22 })]).extras).toEqual(['repeat 0']);
  });

  it('a key 25 dB softer than all others is no mistake', () => {
    expect(told([played(1.02, 66, { levelDb: -45 })])).toEqual({ notRight: [], extras: [] });
  });
});

describe('a slip that was really played', () => {
  it.each([
    // B4 lies a twelfth over the left hand's E3, and is caught with C5 in the chord E4 G4 C5.
    ['a twelfth over the other hand', played(2.02, 71)],
    // D5 lies two octaves and a whole tone over C3: on no partial.
    ['on no partial of anything', played(2.02, 74)],
  ])('is not explained away where it lies %s', (_, slip) => {
    expect(told([slip])).toEqual({ notRight: [], extras: ['slip 1'] });
  });

  it('heard with little confidence on a partial is left out', () => {
    expect(told([played(2.02, 71, { confidence: 0.6 })])).toEqual({ notRight: [], extras: [] });
  });
});

describe('a key struck in place of another', () => {
  it('lies between the neighbours of its chord: fingers do not cross', () => {
    // The right hand's C4 is not heard; F3, caught with the left hand's E3, cannot be it, but D4 can.
    expect(told([played(1, 53)], ['0 60'])).toEqual({ notRight: ['unsure 0 60'], extras: ['slip 0'] });
    expect(told([played(1, 62)], ['0 60'])).toEqual({ notRight: ['wrong 0 60'], extras: [] });
  });

  it('is not a key that was struck as it should be and sounded again', () => {
    expect(told([played(1.05, 52)], ['0 64']).notRight).toEqual(['unsure 0 64']);
  });
});

describe('upper notes that the ear loses', () => {
  it('do not make the last chord look like a new beginning', () => {
    // I–IV–I–V7–I with many upper notes unheard, all of them in the V7: the last chord has the same keys as the first.
    const unheard = ['0 64', '0 67', '1 65', '1 69', '2 60', '2 64', '2 67', '3 59', '3 65', '3 67', '4 67'];
    const exercise = buildExercise({ ...TRIADS, form: 'progression' });
    const notes = exercise.steps.flatMap(({ step, notes: expected }) =>
      expected
        .filter(({ midi }) => !unheard.includes(`${step} ${midi}`))
        // spread by 20 ms, the upper notes first
        .map(({ midi }) => played(1 + step + (67 - midi) / 1000, midi)),
    );
    const alignment = matchNotes(heardOf(notes), exercise);
    expect(alignment.remarks).toEqual([]);
    expect(alignment.matched.filter(({ verdict }) => verdict === 'missed')).toEqual([]);
  });
});
