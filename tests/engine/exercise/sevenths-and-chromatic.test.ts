import { describe, expect, it } from 'vitest';
import { UsageError } from '../../../src/engine/base/errors.ts';
import { allChoices, buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, Form, Hand } from '../../../src/engine/exercise/index.ts';
import { isBlack } from '../../../src/engine/base/units.ts';

const fingersUp = (key: string, form: Form, hands: Hand, notes: number): string =>
  buildExercise({ key, form, hands, octaves: 1 })
    .steps.slice(0, notes)
    .map(({ notes: [note] }) => note!.finger)
    .join('');
const namesOf = (choice: ExerciseChoice): string =>
  buildExercise(choice)
    .steps.map(({ notes: [note] }) => note!.name)
    .join(' ');

describe('arpeggios of sevenths and the chromatic scale, written out', () => {
  it('go up and down from the chord’s own root in the register of the hand', () => {
    const V7: ExerciseChoice = { key: 'C major', form: 'dominant-seventh', hands: 'right', octaves: 1 };
    expect(namesOf(V7)).toBe('G3 B3 D4 F4 G4 F4 D4 B3 G3');
    expect(namesOf({ ...V7, key: 'C minor', hands: 'left' })).toBe('G2 B2 D3 F3 G3 F3 D3 B2 G2');
    expect(namesOf({ ...V7, key: 'C minor', form: 'diminished-seventh' })).toBe(
      'B3 D4 F4 Ab4 B4 Ab4 F4 D4 B3',
    );
  });

  it('has sharps going up, flats coming down, and the tonic’s own name', () => {
    expect(namesOf({ key: 'Eb major', form: 'chromatic', hands: 'right', octaves: 1 })).toBe(
      'Eb4 E4 F4 F#4 G4 G#4 A4 A#4 B4 C5 C#5 D5 Eb5 D5 Db5 C5 B4 Bb4 A4 Ab4 G4 Gb4 F4 E4 Eb4',
    );
  });

  it('has one length of five fingers and no other', () => {
    expect(() => buildExercise({ key: 'C major', form: 'five-finger', hands: 'right', octaves: 2 })).toThrow(
      UsageError,
    );
  });
});

/** From memory; common practice, no source. */
describe('their fingers', () => {
  it.each<readonly [key: string, right: string, left: string]>([
    ['C major', '12345', '54321'],
    ['D major', '12345', '54321'],
    ['Eb major', '41234', '32143'],
    ['Ab major', '41234', '21432'],
    ['Db major', '41234', '21432'],
    ['B major', '23412', '43214'],
    ['F# major', '41234', '21432'],
  ])('on the dominant seventh of %s are %s and %s', (key, right, left) => {
    expect(fingersUp(key, 'dominant-seventh', 'right', 5)).toBe(right);
    expect(fingersUp(key, 'dominant-seventh', 'left', 5)).toBe(left);
  });

  it('on the chromatic scale from C are 1 and 3, and 2 where white keys stand side by side', () => {
    expect(fingersUp('C major', 'chromatic', 'right', 13)).toBe('1313123131312');
    expect(fingersUp('C major', 'chromatic', 'left', 13)).toBe('1313213131321');
  });

  it('never put the thumb on a black key, and never one finger on two keys in a row', () => {
    const forms: readonly Form[] = ['dominant-seventh', 'diminished-seventh', 'chromatic'];
    for (const choice of allChoices().filter(
      ({ form, hands }) => forms.includes(form) && hands !== 'together',
    )) {
      const notes = buildExercise(choice).steps.map(({ notes: [note] }) => note!);
      expect(notes.filter(({ midi, finger }) => finger === 1 && isBlack(midi))).toEqual([]);
      expect(notes.slice(1).filter(({ finger }, at) => finger === notes[at]!.finger)).toEqual([]);
    }
  });
});
