import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allChoices, buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, Form, Hand } from '../../../src/engine/exercise/index.ts';
import { crossingBetween } from '../../../src/engine/exercise/crossings.ts';

const EXERCISES = allChoices().map(buildExercise);
const CROSSING: readonly Form[] = [
  ...(['arpeggio', 'scale', 'dominant-seventh', 'diminished-seventh'] as const),
  ...(['contrary-motion', 'two-octaves-apart', 'tenths-apart', 'thirds-apart', 'sixths-apart'] as const),
  ...(['arpeggio-first-inversion', 'arpeggio-second-inversion'] as const),
];

const crossingsOf = (choice: ExerciseChoice) =>
  buildExercise(choice).steps.flatMap(({ step, notes, crossings }) =>
    crossings.map(({ kind, direction }) => `${step} ${notes[0]!.name} ${kind} ${direction}`),
  );

describe('a crossing', () => {
  // The rule: the thumb passes under on the way out (right hand up, left hand down), a finger over it on the way back.
  it.each([
    ['right', 64, 3, 65, 1, 'thumb-under', 'up'],
    ['right', 65, 1, 64, 3, 'over-thumb', 'down'],
    ['left', 57, 3, 55, 1, 'thumb-under', 'down'],
    ['left', 55, 1, 57, 3, 'over-thumb', 'up'],
  ] as const)(
    'in the %s hand from %i (finger %i) to %i (finger %i): %s %s',
    (hand, a, f, b, g, kind, direction) => {
      expect(crossingBetween({ midi: a, finger: f }, { midi: b, finger: g }, hand)).toEqual({
        hand,
        kind,
        direction,
      });
    },
  );

  it.each<readonly [Hand, number, number, number, number, string]>([
    ['right', 60, 1, 62, 2, 'fingers follow the keys'],
    ['right', 67, 5, 64, 1, 'the hand moves back as a whole'],
    ['right', 60, 1, 67, 5, 'the hand opens'],
    ['left', 48, 5, 50, 4, 'fingers follow the keys'],
    ['right', 60, 1, 60, 2, 'the same key is struck again'],
    ['right', 60, 1, 62, 1, 'the thumb slides'],
  ])('is none in the %s hand from %i (%i) to %i (%i): %s', (hand, a, f, b, g) => {
    expect(crossingBetween({ midi: a, finger: f }, { midi: b, finger: g }, hand)).toBeNull();
  });

  it('of one hand is a crossing of the other in the mirror', () => {
    const key = fc.record({
      midi: fc.integer({ min: 21, max: 108 }),
      finger: fc.integer({ min: 1, max: 5 }),
    });
    const mirrored = ({ midi, finger }: { midi: number; finger: number }) => ({ midi: 124 - midi, finger });
    fc.assert(
      fc.property(key, key, (from, to) => {
        const right = crossingBetween(from, to, 'right');
        const left = crossingBetween(mirrored(from), mirrored(to), 'left');
        expect(left?.kind).toBe(right?.kind);
      }),
    );
  });

  it('backwards is the other kind in the other direction', () => {
    const key = fc.record({
      midi: fc.integer({ min: 21, max: 108 }),
      finger: fc.integer({ min: 1, max: 5 }),
    });
    fc.assert(
      fc.property(key, key, (from, to) => {
        const there = crossingBetween(from, to, 'right');
        const back = crossingBetween(to, from, 'right');
        expect(back === null).toBe(there === null);
        if (there && back) {
          expect(back.kind).not.toBe(there.kind);
          expect(back.direction).not.toBe(there.direction);
        }
      }),
    );
  });
});

describe('the crossings of an exercise', () => {
  // From the published fingerings 12312345 and 4321321 (right), 54321321 and 2312345 (left) of one octave.
  it('lie on F and E in a C major scale of the right hand', () => {
    expect(crossingsOf({ key: 'C major', form: 'scale', hands: 'right', octaves: 1 })).toEqual([
      '3 F4 thumb-under up',
      '12 E4 over-thumb down',
    ]);
  });

  it('lie on A and G in a C major scale of the left hand', () => {
    expect(crossingsOf({ key: 'C major', form: 'scale', hands: 'left', octaves: 1 })).toEqual([
      '5 A3 over-thumb up',
      '10 G3 thumb-under down',
    ]);
  });

  // A teacher's published pages on the melodic minor of F♯: thumb under onto A and E♯ going up, 3 over onto C♯ and
  // G♯ coming down.
  it('differ between up and down in F sharp melodic minor', () => {
    const choice = {
      key: 'F# minor',
      form: 'scale',
      hands: 'right',
      octaves: 1,
      minorScale: 'melodic',
    } as const;
    expect(crossingsOf(choice)).toEqual([
      '2 A4 thumb-under up',
      '6 E#5 thumb-under up',
      '10 C#5 over-thumb down',
      '13 G#4 over-thumb down',
    ]);
  });

  it('are one an octave each way in arpeggios, but for the octave that ends on 5 or begins on the thumb', () => {
    expect(crossingsOf({ key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 })).toEqual([
      '3 C5 thumb-under up',
      '10 G4 over-thumb down',
    ]);
    expect(crossingsOf({ key: 'Db major', form: 'arpeggio', hands: 'right', octaves: 2 })).toEqual([
      '1 F4 thumb-under up',
      '4 F5 thumb-under up',
      '9 Db5 over-thumb down',
      '12 Db4 over-thumb down',
    ]);
  });

  it('are as many up as down', () => {
    const runs = EXERCISES.filter(({ choice }) => CROSSING.includes(choice.form));
    for (const { choice, steps } of runs) {
      const crossings = steps.flatMap((step) => step.crossings);
      const count = (direction: string) =>
        crossings.filter((crossing) => crossing.direction === direction).length;
      expect(count('up')).toBe(count('down'));
      expect(count('up')).toBeGreaterThanOrEqual(choice.octaves - 1);
    }
  });

  it('are at most one a hand at one step, and never at the first, in chords, solid or broken, in octaves, in five fingers or where the hand glides through all twelve keys', () => {
    for (const { choice, steps } of EXERCISES) {
      expect(steps[0]!.crossings).toEqual([]);
      const twice = steps.filter(
        ({ crossings }) => new Set(crossings.map(({ hand }) => hand)).size < crossings.length,
      );
      expect(twice).toEqual([]);
      if (!CROSSING.includes(choice.form)) expect(steps.flatMap(({ crossings }) => crossings)).toEqual([]);
    }
  });
});
