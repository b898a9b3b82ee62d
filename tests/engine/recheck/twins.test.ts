import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { twinPlaces } from '../../../src/engine/recheck/twins.ts';

const written = (choice: ExerciseChoice) =>
  buildExercise(choice).steps.flatMap(({ step, notes }) =>
    notes.map((expected) => ({ step, expected, verdict: 'missed' as const })),
  );

describe('twins: the same key among the same others, at another step', () => {
  const octaves = written({ key: 'D major', form: 'arpeggio', hands: 'together', octaves: 2 });
  const last = octaves.at(-1)!.step;

  it('up and down an arpeggio each note has one, as far from the end as it is from the beginning', () => {
    twinPlaces(octaves).forEach((twins, place) => {
      const { step, expected } = octaves[place]!;
      if (step === last / 2) return expect(twins).toEqual([]);
      expect(twins.map((twin) => octaves[twin]!.step)).toEqual([last - step]);
      for (const twin of twins) expect(octaves[twin]!.expected.midi).toBe(expected.midi);
    });
  });

  it('in a progression the notes of I have two, and a common tone in another chord is none', () => {
    const chords = written({ key: 'A major', form: 'progression', hands: 'together', octaves: 1 });
    const counts = twinPlaces(chords).map((twins, place) => [chords[place]!.step, twins.length] as const);
    for (const [step, count] of counts) expect(count).toBe(step % 2 === 0 ? 2 : 0);
  });
});
