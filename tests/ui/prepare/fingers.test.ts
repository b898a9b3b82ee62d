import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/index.ts';
import { otherwiseWords } from '../../../src/ui/names/otherwise.ts';
import { fingerRows } from '../../../src/ui/prepare/fingers.ts';
import { registersOf } from '../../../src/ui/prepare/options.ts';

describe('the fingers of an exercise', () => {
  it('stand hand by hand and way by way, the turn on the way up', () => {
    const rows = fingerRows(buildExercise({ key: 'C major', form: 'scale', hands: 'together', octaves: 1 }));
    expect(
      rows.map(({ hand, way, places }) => `${hand} ${way}: ${places.map(({ finger }) => finger).join('')}`),
    ).toEqual(['right up: 12312345', 'right down: 4321321', 'left up: 54321321', 'left down: 2312345']);
    expect(rows[0]!.places.filter(({ crosses }) => crosses).map(({ name }) => name)).toEqual(['F4']);
  });

  it('stand key by key in chords, and for both hands where they share one', () => {
    const [chords] = fingerRows(
      buildExercise({ key: 'C major', form: 'progression', hands: 'right', octaves: 1 }),
    );
    expect(chords).toMatchObject({ way: 'all' });
    expect(chords!.places.slice(0, 3).map(({ name, fromBottom }) => `${name} ${fromBottom}`)).toEqual([
      'C4 0',
      'E4 1',
      'G4 2',
    ]);
    const shared = fingerRows(
      buildExercise({ key: 'C major', form: 'contrary-motion', hands: 'together', octaves: 1 }),
    );
    expect(shared.map(({ hand, places }) => `${hand} ${places[0]!.name}`)).toEqual(['right C4', 'left C4']);
  });
});

describe('what is not as usual', () => {
  it('is said in a few words, and nothing where all is', () => {
    const scale = { key: 'Ab major', form: 'scale', hands: 'together', octaves: 2 } as const;
    expect(otherwiseWords(scale)).toBe('');
    expect(
      otherwiseWords({
        ...{ ...scale, notesABeat: 4, register: -1 },
        fingering: {
          left: 'thumbs-together',
          written: [{ hand: 'right', step: 1, fromBottom: 0, finger: 2 }],
        },
      }),
    ).toBe('4 notes a beat, 1 octave down, left hand: Thumbs together, one finger written');
  });

  it('offers registers that lie on the keyboard', () => {
    expect(registersOf({ key: 'C major', form: 'scale', hands: 'right', octaves: 1 })).toEqual([
      3, 2, 1, 0, -1, -2, -3,
    ]);
    expect(registersOf({ key: 'C major', form: 'scale', hands: 'together', octaves: 4 })).toEqual([1, 0, -1]);
  });
});
