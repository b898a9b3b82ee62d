import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { allChoices, buildExercise } from '../../../src/engine/exercise/index.ts';
import { matchNotes, recogniseFrom } from '../../../src/engine/match/index.ts';
import { NO_MISTAKES } from '../../support/student/knobs.ts';
import { createRandom } from '../../support/random.ts';
import { attempt, GOOD_LISTENER, heardOf, played } from './simulated.ts';

const CHOICES = allChoices();
const KINDS = [...new Set(CHOICES.map(({ form, hands }) => `${form}, ${hands}`))];

describe('recognising the exercise from the notes', () => {
  it.each(KINDS)('tells key, octaves and scale of %s, played by a tidy student', (kind) => {
    const wrong = CHOICES.filter(({ form, hands }) => `${form}, ${hands}` === kind)
      .filter((_, index) => index % 5 === 0)
      .filter((choice, seed) => {
        const { heard, exercise } = attempt(choice, { jitterMs: 12 }, GOOD_LISTENER, seed);
        const found = recogniseFrom(heard).choice;
        return JSON.stringify(found) !== JSON.stringify(exercise.choice);
      });
    expect(wrong).toEqual([]);
  });

  it('names the right key and form, or none, for 200 students with three mistakes each', () => {
    const random = createRandom(11);
    const outcomes = Array.from({ length: 200 }, (_, seed) => {
      const choice = random.pick(CHOICES);
      const mistakes = { ...NO_MISTAKES, wrong: 1, missed: 1, slips: 1 };
      const { heard } = attempt(choice, { mistakes, jitterMs: 20 }, GOOD_LISTENER, seed);
      const found = recogniseFrom(heard).choice;
      if (found === null) return 'none';
      return found.key === choice.key && found.form === choice.form ? 'right' : 'wrong';
    });
    expect(outcomes.filter((outcome) => outcome === 'wrong')).toHaveLength(0);
    expect(outcomes.filter((outcome) => outcome === 'right').length).toBeGreaterThanOrEqual(190);
  });

  it('takes a single line in the bass for the left hand and one in the treble for the right', () => {
    const low = attempt({ key: 'F major', hands: 'left', octaves: 2 });
    const high = attempt({ key: 'F major', hands: 'right', octaves: 2 });
    expect(recogniseFrom(low.heard).choice?.hands).toBe('left');
    expect(recogniseFrom(high.heard).choice?.hands).toBe('right');
  });

  it('takes a piano read 35 cents sharp for one read a semitone low: few stand so sharp, many 65 cents flat', () => {
    const { heard } = attempt({ key: 'F major', octaves: 2 }, {}, { readsOff: -1, tuningCents: 35 });
    expect(recogniseFrom(heard).choice?.key).toBe('F major');
    const { heard: atPitch } = attempt({ key: 'F major', octaves: 2 }, {}, { tuningCents: 15 });
    expect(recogniseFrom(atPitch).choice?.key).toBe('F major');
  });

  it.each([
    ['nothing', []],
    ['two notes', [60, 64]],
    ['a chromatic scale', [60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70, 71, 72]],
    ['a tune', [67, 67, 69, 67, 72, 71, 67, 67, 69, 67, 74, 72]],
    ['keys at random', [41, 88, 63, 70, 55, 90, 37, 66, 81, 58]],
  ])('says nothing of %s', (_, keys) => {
    expect(
      recogniseFrom(heardOf(keys.map((midi, index) => played(1 + 0.4 * index, midi)))).choice,
    ).toBeNull();
  });
});

describe('another exercise than the one chosen', () => {
  const chosen: ExerciseChoice = { key: 'A major', form: 'arpeggio', hands: 'right', octaves: 2 };

  it.each<[string, Partial<ExerciseChoice>]>([
    ['another key', { key: 'E major' }],
    ['the minor', { key: 'A minor' }],
    ['one octave instead of two', { octaves: 1 }],
    ['the scale', { form: 'scale' }],
    ['both hands', { hands: 'together' }],
    ['the triads', { form: 'triads', octaves: 1 }],
  ])('%s is named', (_, other) => {
    const { heard } = attempt({ ...chosen, ...other }, { jitterMs: 12 }, GOOD_LISTENER);
    const { betterFit } = matchNotes(heard, buildExercise(chosen));
    expect(betterFit?.choice).toMatchObject({ ...chosen, ...other });
  });

  it('the same line by the other hand is not: a hand cannot be heard', () => {
    const { heard } = attempt({ ...chosen, hands: 'left' });
    const alignment = matchNotes(heard, buildExercise(chosen));
    expect(alignment.betterFit).toBeUndefined();
    expect(alignment.octaveShift).toBe(-1);
  });

  it('a bad attempt at the chosen one is not', () => {
    const mistakes = { wrong: 2, missed: 1, slips: 1, repeats: 0, restarts: 0 };
    for (let seed = 0; seed < 50; seed++) {
      const { heard, exercise } = attempt(chosen, { mistakes, jitterMs: 25 }, GOOD_LISTENER, seed);
      expect(matchNotes(heard, exercise).betterFit).toBeUndefined();
    }
  });
});
