import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { allChoices, buildExercise } from '../../../src/engine/exercise/index.ts';
import type { PlayedNote } from '../../../src/engine/listen/index.ts';
import type { Alignment } from '../../../src/engine/match/index.ts';
import { GHOST_SEMITONES } from '../../../src/engine/match/costs/bounds.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { heardOf, played } from './simulated.ts';

const CHOICES = allChoices();
const anyChoice = fc.integer({ min: 0, max: CHOICES.length - 1 }).map((index) => CHOICES[index]!);
const someStep = fc.double({ min: 0, max: 0.999, noNaN: true });

/** The exercise played as written, evenly: one played note a place, in the order of the places. */
function playedAsWritten(choice: ExerciseChoice, bpm = 72): PlayedNote[] {
  return buildExercise(choice).steps.flatMap(({ beat, notes }) =>
    notes.map((note) => played(1 + (beat * 60) / bpm, note.midi)),
  );
}

/** step/hand/midi of every note whose verdict is not "correct" */
function notRight(alignment: Alignment): string[] {
  return alignment.matched
    .filter((note) => note.verdict !== 'correct')
    .map(({ step, expected, verdict }) => `${verdict} ${step} ${expected.hand} ${expected.midi}`);
}

/** Hands together: the left hand strikes the same note an octave below, and nobody can say blind whether this one sounded. */
function isCovered(choice: ExerciseChoice, step: number, midi: number): boolean {
  const { notes } = buildExercise(choice).steps[step]!;
  return notes.some((note) => note.hand === 'left' && (note.midi === midi - 12 || note.midi === midi - 24));
}

/** Keys that no step from two before to two after asks for, nearest first. */
function strangers(choice: ExerciseChoice, step: number, midi: number): number[] {
  const steps = buildExercise(choice).steps.slice(Math.max(0, step - 2), step + 3);
  const asked = new Set(steps.flatMap(({ notes }) => notes.map((note) => note.midi)));
  // At a partial of a note of the same chord, or an octave below it, a key looks like a listener's ghost: only the second listening
  // tells it from one.
  const beside = buildExercise(choice).steps[step]!.notes.map((note) => note.midi);
  return [1, -1, 2, -2, 3, -3]
    .map((by) => midi + by)
    .filter((key) => !asked.has(key) && !beside.some((note) => GHOST_SEMITONES.includes(key - note)));
}

function placeAt(choice: ExerciseChoice, share: number) {
  const places = buildExercise(choice).steps.flatMap(({ step, beat, notes }) =>
    notes.map((note) => ({ step, beat, note })),
  );
  const index = Math.floor(share * places.length);
  return { index, ...places[index]! };
}

describe('an exercise played as written', () => {
  const kinds = [...new Set(CHOICES.map((choice) => `${choice.form}, ${choice.hands}`))];

  it.each(kinds)('is right in every note in every key: %s', (kind) => {
    for (const choice of CHOICES.filter(({ form, hands }) => `${form}, ${hands}` === kind)) {
      const alignment = matchNotes(heardOf(playedAsWritten(choice)), buildExercise(choice));
      expect(notRight(alignment), choice.key).toEqual([]);
      expect(alignment).toMatchObject({ extras: [], remarks: [], octaveShift: 0, semitoneShift: 0, fit: 1 });
      expect(alignment.betterFit).toBeUndefined();
    }
  });

  it('is the same at any time of the recording and at any tempo', () => {
    fc.assert(
      fc.property(
        anyChoice,
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 30, max: 200, noNaN: true }),
        (choice, laterSec, bpm) => {
          const notes = playedAsWritten(choice, bpm).map((note) => ({
            ...note,
            timeSec: note.timeSec + laterSec,
          }));
          const alignment = matchNotes(heardOf(notes), buildExercise(choice));
          expect(notRight(alignment)).toEqual([]);
          expect(alignment.extras).toEqual([]);
          expect(alignment.remarks).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is right in another octave, with a remark', () => {
    fc.assert(
      fc.property(anyChoice, fc.constantFrom(-2, -1, 1, 2), (choice, octaves) => {
        const notes = playedAsWritten(choice).map((note) => ({ ...note, midi: note.midi + 12 * octaves }));
        const alignment = matchNotes(heardOf(notes), buildExercise(choice));
        expect(notRight(alignment)).toEqual([]);
        expect(alignment.octaveShift).toBe(octaves);
        expect(alignment.remarks).toEqual([{ kind: 'other-octave', octaveShift: octaves }]);
        expect(alignment.matched[0]!.expected.midi).toBe(
          buildExercise(choice).steps[0]!.notes[0]!.midi + 12 * octaves,
        );
      }),
      { numRuns: 60 },
    );
  });

  it('does not depend on the order in which the notes of one moment are listed or struck', () => {
    fc.assert(
      fc.property(
        anyChoice,
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (choice, jitter) => {
          const notes = playedAsWritten(choice).map((note, index) => ({
            ...note,
            timeSec: note.timeSec + 0.025 * jitter[index % jitter.length]!,
          }));
          const alignment = matchNotes(heardOf(notes), buildExercise(choice));
          expect(notRight(alignment)).toEqual([]);
          expect(alignment.extras).toEqual([]);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('an exercise with one mistake', () => {
  it('lacks exactly the note left out', () => {
    fc.assert(
      fc.property(anyChoice, someStep, (choice, share) => {
        const { index, step, note } = placeAt(choice, share);
        const notes = playedAsWritten(choice).filter((_, at) => at !== index);
        const alignment = matchNotes(heardOf(notes), buildExercise(choice));
        const verdict = isCovered(choice, step, note.midi) ? 'unsure' : 'missed';
        expect(notRight(alignment)).toEqual([`${verdict} ${step} ${note.hand} ${note.midi}`]);
        expect(alignment.extras).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('has exactly the wrong note that was struck for another', () => {
    fc.assert(
      fc.property(anyChoice, someStep, fc.nat(5), (choice, share, which) => {
        const { index, step, note } = placeAt(choice, share);
        const keys = strangers(choice, step, note.midi);
        fc.pre(keys.length > 0);
        const midi = keys[which % keys.length]!;
        const notes = playedAsWritten(choice).map((one, at) => (at === index ? { ...one, midi } : one));
        const alignment = matchNotes(heardOf(notes), buildExercise(choice));
        expect(notRight(alignment)).toEqual([`wrong ${step} ${note.hand} ${note.midi}`]);
        expect(alignment.extras).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('has exactly the extra note that was put in', () => {
    fc.assert(
      fc.property(anyChoice, someStep, fc.nat(5), (choice, share, which) => {
        const { step, beat, note } = placeAt(choice, share);
        const keys = strangers(choice, step, note.midi);
        fc.pre(keys.length > 0);
        const beats = buildExercise(choice).steps;
        fc.pre(step + 1 < beats.length); // after the last note it would not be part of the attempt
        const next = beats[step + 1]!.beat;
        const midi = keys[which % keys.length]!;
        const extra = played(1 + ((beat + next) / 2) * (60 / 72), midi);
        const heard = heardOf([...playedAsWritten(choice), extra]);
        const alignment = matchNotes(heard, buildExercise(choice));
        expect(notRight(alignment)).toEqual([]);
        expect(alignment.extras).toEqual([{ played: heard.notes.indexOf(extra), kind: 'other', step }]);
      }),
      { numRuns: 300 },
    );
  });

  it('has exactly the neighbour caught with a right note as a slip', () => {
    fc.assert(
      fc.property(anyChoice, someStep, fc.constantFrom(-0.03, 0.03, 0.05), (choice, share, apartSec) => {
        const { step, beat, note } = placeAt(choice, share);
        const midi = strangers(choice, step, note.midi).find((key) => Math.abs(key - note.midi) <= 2);
        fc.pre(midi !== undefined);
        const extra = played(1 + (beat * 60) / 72 + apartSec, midi!);
        const heard = heardOf([...playedAsWritten(choice), extra]);
        const alignment = matchNotes(heard, buildExercise(choice));
        expect(notRight(alignment)).toEqual([]);
        expect(alignment.extras).toMatchObject([{ played: heard.notes.indexOf(extra), kind: 'slip', step }]);
      }),
      { numRuns: 300 },
    );
  });
});
