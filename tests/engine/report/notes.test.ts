import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import type { Change } from './words/scenes.ts';
import { tell } from './words/scenes.ts';

const SCALE: ExerciseChoice = { key: 'A major', form: 'scale', hands: 'right', octaves: 1 };
const BOTH: ExerciseChoice = { ...SCALE, hands: 'together' };
const at = (change: Change) => (step: number) => (step === 3 ? change : {});

describe('the notes of a report', () => {
  it('stand in order of time, those of one moment from the lowest up', () => {
    const { notes } = tell({
      choice: BOTH,
      handMs: (step, hand) => (step === 2 && hand === 'left' ? 40 : 0),
    });
    expect(notes.slice(0, 8).map(({ name }) => name)).toEqual([
      'A2',
      'A3',
      'B2',
      'B3',
      'C#4',
      'C#3',
      'D3',
      'D4',
    ]);
    const times = notes.map(({ timeSec }) => timeSec);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  it.each([
    [
      'a wrong one, with what was wanted',
      SCALE,
      { wrong: { midi: 63 } },
      { verdict: 'wrong', name: 'D#4', midi: 63, wantedMidi: 62, wantedName: 'D4', hand: 'right', finger: 1 },
    ],
    [
      'one caught with it, under no finger',
      SCALE,
      { caught: 63 },
      { verdict: 'extra', name: 'D#4', midi: 63, extraKind: 'slip', hand: 'right', finger: null },
    ],
    [
      'the same again, under its finger',
      SCALE,
      { twice: true },
      { verdict: 'extra', name: 'D4', midi: 62, extraKind: 'repeat', hand: 'right', finger: 1 },
    ],
    [
      'one caught near the left hand',
      BOTH,
      { caught: 48 },
      { verdict: 'extra', name: 'C3', midi: 48, hand: 'left', finger: null },
    ],
    [
      'one caught near the right hand',
      BOTH,
      { caught: 64 },
      { verdict: 'extra', name: 'E4', midi: 64, hand: 'right', finger: null },
    ],
  ] as const)('%s', (_, choice, change, note) => {
    const { notes } = tell({ choice, change: at(change) });
    expect(notes.filter(({ verdict }) => verdict !== 'correct')).toMatchObject([{ ...note, step: 3 }]);
  });

  it('missed, by step, key and hand', () => {
    const { missed, notes } = tell({ choice: BOTH, change: at({ missed: { note: 0 } }) });
    expect(missed).toEqual([{ step: 3, midi: 50, name: 'D3', hand: 'left' }]);
    expect(notes).toHaveLength(29);
  });
});
