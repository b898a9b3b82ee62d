import type { ExerciseChoice } from '../../../src/engine/index.ts';
import type { StudentKnobs } from '../../support/render.ts';

/** Uneven attempts on the development piano, to be made even. */
export const UNEVEN: readonly {
  readonly name: string;
  readonly exercise: ExerciseChoice;
  readonly student: Partial<StudentKnobs>;
}[] = [
  {
    name: 'a quick scale',
    exercise: { key: 'E major', form: 'scale', hands: 'right', octaves: 2 },
    student: { bpm: 96, jitterMs: 20 },
  },
  {
    name: 'an arpeggio with late thumbs',
    exercise: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
    student: { bpm: 80, jitterMs: 10, lateCrossing: { ms: 90, kind: 'thumb-under' } },
  },
  {
    name: 'a progression',
    exercise: { key: 'D major', form: 'progression', hands: 'left', octaves: 1 },
    student: { bpm: 60, jitterMs: 40 },
  },
  {
    name: 'a scale hands together',
    exercise: { key: 'D major', form: 'scale', hands: 'together', octaves: 1 },
    student: { bpm: 80, jitterMs: 20 },
  },
];
