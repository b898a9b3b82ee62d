import { expect, it } from 'vitest';
import { buildExercise, practisedExercise } from '../../../../src/engine/exercise/index.ts';
import type { Intention } from '../../../../src/engine/exercise/index.ts';
import { isChordForm } from '../../../../src/engine/report/words/scene.ts';

const ARPEGGIO = { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 } as const;
const once: Intention = { times: 1, rhythm: 'even' };
const blocked: Intention = { ...once, blocked: true };
const practised = (intention: Intention, repeats: number) =>
  practisedExercise(ARPEGGIO, { intention, repeats });

it.each([
  ['triads', buildExercise({ ...ARPEGGIO, form: 'triads', octaves: 1 }), true],
  ['an arpeggio', buildExercise(ARPEGGIO), false],
  ['an arpeggio whose positions were struck as chords', practised(blocked, 1), true],
  [
    'one whose positions were to be struck as chords, and that was played as it is written',
    practised(blocked, 0),
    false,
  ],
  ['one that was practised note by note', practised(once, 1), false],
])('steps are chords or not: %s', (_, exercise, chords) => {
  expect(isChordForm(exercise)).toBe(chords);
});
