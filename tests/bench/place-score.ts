import { buildExercise } from '../../src/engine/index.ts';
import type { Report } from '../../src/engine/index.ts';
import type { Truth } from '../support/render.ts';
import { answersOf } from './verdict-score.ts';
import type { Said } from './verdict-score.ts';

/** One expected note: what really became of it, what the report says, and how it stood among the others. */
export interface PlaceRecord {
  readonly midi: number;
  readonly truth: 'struck' | 'wrong' | 'absent';
  readonly said: Said;
  /** of two notes an octave apart, one in each hand */
  readonly part: 'lower' | 'upper' | 'alone';
  /** semitones down to the next note of the step that was struck; null: none below */
  readonly interval: number | null;
  /** left hand − right hand as the student meant it */
  readonly leftLouderDb: number;
}

/** Report against truth, expected note by expected note; what lies after a breaking off is left out. */
export function scorePlaces(report: Report | null, truth: Truth): readonly PlaceRecord[] {
  const answer = answersOf(report);
  const { octaveShift, leftHandDb } = truth.student;
  return buildExercise(truth.exercise).steps.flatMap(({ step, notes }) => {
    const sounded = truth.notes.filter((note) => note.step === step && note.verdict !== 'extra');
    return notes.flatMap((note): readonly PlaceRecord[] => {
      const midi = note.midi + 12 * octaveShift;
      const stroke = sounded.find((one) => one.hand === note.hand && (one.wantedMidi ?? one.midi) === midi);
      const left = truth.missed.some(
        (one) => one.step === step && one.hand === note.hand && one.midi === midi,
      );
      if (stroke === undefined && !left) return [];
      const below = sounded.filter((one) => one.midi < midi).map((one) => midi - one.midi);
      const octaveAway = (semitones: number): boolean =>
        notes.some((other) => other.hand !== note.hand && other.midi - note.midi === semitones);
      return [
        {
          midi,
          truth: stroke === undefined ? 'absent' : stroke.verdict === 'wrong' ? 'wrong' : 'struck',
          said: answer(step, note.hand, midi),
          part: octaveAway(-12) ? 'upper' : octaveAway(12) ? 'lower' : 'alone',
          interval: below.length === 0 ? null : Math.min(...below),
          leftLouderDb: leftHandDb,
        },
      ];
    });
  });
}
