import { Chord, Key, Note } from 'tonal';
import { describe, expect, it } from 'vitest';
import { isBlack } from '../../../src/engine/base/units.ts';
import { ALL_KEYS, allChoices, buildExercise, playedBy } from '../../../src/engine/exercise/index.ts';
import type { Exercise, ExerciseChoice, Form, Hand, MinorScale } from '../../../src/engine/exercise/index.ts';
import { ARPEGGIO_FINGERINGS } from '../../../src/engine/exercise/fingering/arpeggios.ts';
import { triadFingers } from '../../../src/engine/exercise/forms/further-arpeggios.ts';

const written = (choice: ExerciseChoice): string =>
  buildExercise(choice)
    .steps.map(({ notes }) => notes.map(({ name }) => name).join('+'))
    .join(' ');
const handOf = ({ steps }: Exercise, hand: Hand) =>
  steps.map(({ notes }) => notes.filter((one) => one.hand === hand));
const fingersOf = (key: string, form: Form, hands: Hand, octaves = 1): string =>
  buildExercise({ key, form, hands, octaves })
    .steps.map(({ notes }) => notes.map(({ finger }) => finger).join(''))
    .join(' ');

/** From memory; common practice, no source. */
describe('scales in another guise, written out', () => {
  it.each<readonly [Form, string]>([
    [
      'contrary-motion',
      'C4 B3+D4 A3+E4 G3+F4 F3+G4 E3+A4 D3+B4 C3+C5 D3+B4 E3+A4 F3+G4 G3+F4 A3+E4 B3+D4 C4',
    ],
    [
      'two-octaves-apart',
      'C2+C4 D2+D4 E2+E4 F2+F4 G2+G4 A2+A4 B2+B4 C3+C5 B2+B4 A2+A4 G2+G4 F2+F4 E2+E4 D2+D4 C2+C4',
    ],
    [
      'tenths-apart',
      'C3+E4 D3+F4 E3+G4 F3+A4 G3+B4 A3+C5 B3+D5 C4+E5 B3+D5 A3+C5 G3+B4 F3+A4 E3+G4 D3+F4 C3+E4',
    ],
    [
      'sixths-apart',
      'E3+C4 F3+D4 G3+E4 A3+F4 B3+G4 C4+A4 D4+B4 E4+C5 D4+B4 C4+A4 B3+G4 A3+F4 G3+E4 F3+D4 E3+C4',
    ],
    [
      'thirds-apart',
      'C4+E4 D4+F4 E4+G4 F4+A4 G4+B4 A4+C5 B4+D5 C5+E5 B4+D5 A4+C5 G4+B4 F4+A4 E4+G4 D4+F4 C4+E4',
    ],
    [
      'double-thirds',
      'C3+E3+C4+E4 D3+F3+D4+F4 E3+G3+E4+G4 F3+A3+F4+A4 G3+B3+G4+B4 A3+C4+A4+C5 B3+D4+B4+D5 C4+E4+C5+E5 ' +
        'B3+D4+B4+D5 A3+C4+A4+C5 G3+B3+G4+B4 F3+A3+F4+A4 E3+G3+E4+G4 D3+F3+D4+F4 C3+E3+C4+E4',
    ],
  ])('%s', (form, notes) => {
    expect(written({ key: 'C major', form, hands: 'together', octaves: 1 })).toBe(notes);
  });

  it('goes apart and back over two octaves from one key, which is struck once', () => {
    const { steps } = buildExercise({
      key: 'A minor',
      form: 'contrary-motion',
      hands: 'together',
      octaves: 2,
    });
    expect(steps.map(({ notes }) => notes.length)).toEqual([1, ...steps.slice(2).map(() => 2), 1]);
    expect(steps[14]!.notes.map(({ name }) => name)).toEqual(['A1', 'A5']);
  });

  it('begins on a key on which both hands lie, each with its own finger', () => {
    const first = buildExercise({ key: 'Eb major', form: 'contrary-motion', hands: 'together', octaves: 1 })
      .steps[0]!.notes[0]!;
    expect(playedBy('right', first)).toEqual([first]);
    expect(playedBy('left', first)).toMatchObject([{ name: 'Eb4', hand: 'left', finger: 3 }]);
    const [low] = buildExercise({ key: 'C major', form: 'scale', hands: 'together', octaves: 1 }).steps[0]!
      .notes;
    expect(playedBy('right', low!)).toEqual([]);
  });

  const SCALES: readonly Form[] = [
    'contrary-motion',
    'two-octaves-apart',
    'tenths-apart',
    'sixths-apart',
    'thirds-apart',
    'scale-in-octaves',
    'double-thirds',
    'double-sixths',
  ];

  // tonal 6.4: Key.majorKey, Key.minorKey.
  it('has in all keys the notes that the library tonal gives the scale, in each hand', () => {
    for (const choice of allChoices().filter(
      ({ form, hands, octaves }) => SCALES.includes(form) && hands === 'together' && octaves === 1,
    )) {
      const [tonic] = choice.key.split(' ') as [string];
      const of = (scale: MinorScale | undefined): readonly string[] =>
        scale === undefined ? Key.majorKey(tonic).scale : Key.minorKey(tonic)[scale].scale;
      const wanted = new Set([
        ...of(choice.minorScale),
        ...of(choice.minorScale === 'melodic' ? 'natural' : choice.minorScale),
      ]);
      const names = buildExercise(choice).steps.flatMap(({ notes }) =>
        notes.map(({ name }) => Note.pitchClass(name)),
      );
      expect(new Set(names)).toEqual(wanted);
    }
  });

  it('keeps its distance: two octaves, a tenth, a third or a sixth, at every step of every key', () => {
    const distances: Readonly<Partial<Record<Form, readonly number[]>>> = {
      'two-octaves-apart': [24],
      'tenths-apart': [15, 16, 17],
      'sixths-apart': [7, 8, 9, 10],
      'thirds-apart': [3, 4, 5],
    };
    for (const choice of allChoices().filter(({ form, hands }) => distances[form] && hands === 'together'))
      for (const { notes } of buildExercise(choice).steps)
        expect(distances[choice.form]).toContain(notes[1]!.midi - notes[0]!.midi);
  });

  it('has in thirds and sixths by one hand fingers that lie as the keys do, in every key', () => {
    const double = allChoices().filter(
      ({ form, hands, octaves }) => form.startsWith('double-') && hands !== 'together' && octaves === 2,
    );
    expect(double.length).toBeGreaterThan(150);
    for (const choice of double) {
      const named = JSON.stringify(choice);
      for (const { notes } of buildExercise(choice).steps) {
        const [low, high] = notes;
        expect(notes, named).toHaveLength(2);
        expect(high!.midi - low!.midi, named).toBeLessThanOrEqual(10);
        expect(Math.sign(high!.finger! - low!.finger!), named).toBe(choice.hands === 'right' ? 1 : -1);
      }
    }
    // From memory, common practice, no source: in C major the octave's seven thirds lie in one position of four and one of three.
    expect(fingersOf('C major', 'double-thirds', 'right')).toBe(
      '12 13 24 35 13 24 35 12 35 24 13 35 24 13 12',
    );
  });

  it('lies under the fingers of the scale itself: every key has the finger that it has there', () => {
    const forms: readonly Form[] = [
      'contrary-motion',
      'two-octaves-apart',
      'tenths-apart',
      'thirds-apart',
      'sixths-apart',
    ];
    const eachHand = allChoices()
      .filter(({ form, minorScale }) => forms.includes(form) && minorScale !== 'melodic')
      .flatMap((choice) => (['left', 'right'] as const).map((hands) => ({ ...choice, hands })));
    for (const choice of eachHand) {
      const inner = (exercise: Exercise): Map<string, number | null> =>
        new Map(
          exercise.steps.slice(8, -8).map(({ notes: [note] }) => [Note.pitchClass(note!.name), note!.finger]),
        );
      const scale = inner(buildExercise({ ...choice, form: 'scale', octaves: 4 }));
      for (const { notes } of buildExercise(choice).steps.slice(7, -7)) {
        if (choice.octaves === 1) continue;
        const [note] = notes;
        const isEnd = note!.finger === 5 || Note.pitchClass(note!.name) === choice.key.split(' ')[0];
        if (!isEnd) expect(note!.finger).toBe(scale.get(Note.pitchClass(note!.name)));
      }
    }
  });

  it('in octaves has 5 on white and 4 on black keys beside the thumb', () => {
    expect(fingersOf('D major', 'scale-in-octaves', 'right')).toBe(
      '15 15 14 15 15 15 14 15 14 15 15 15 14 15 15',
    );
    expect(fingersOf('D major', 'scale-in-octaves', 'left')).toBe(
      '51 51 41 51 51 51 41 51 41 51 51 51 41 51 51',
    );
  });
});

describe('arpeggios of the inversions, written out', () => {
  it('go up and down from the third, and from the fifth', () => {
    const choice: ExerciseChoice = {
      key: 'Eb major',
      form: 'arpeggio-first-inversion',
      hands: 'right',
      octaves: 1,
    };
    expect(written(choice)).toBe('G3 Bb3 Eb4 G4 Eb4 Bb3 G3');
    expect(written({ ...choice, form: 'arpeggio-second-inversion' })).toBe('Bb3 Eb4 G4 Bb4 G4 Eb4 Bb3');
  });

  it('have in all keys the notes of the triad that the library tonal gives', () => {
    for (const choice of allChoices().filter(({ form }) => form.startsWith('arpeggio-'))) {
      const [tonic, mode] = choice.key.split(' ') as [string, string];
      const triad = Chord.get(`${tonic}${mode === 'major' ? 'M' : 'm'}`).notes;
      const names = buildExercise(choice).steps.map(({ notes }) => Note.pitchClass(notes[0]!.name));
      expect(names[0]).toBe(triad[choice.form === 'arpeggio-first-inversion' ? 1 : 2]);
      expect(new Set(names)).toEqual(new Set(triad));
    }
  });

  // The four published tables of the arpeggios: the rule by which inversions are fingered finds their crossings too.
  it.each(ALL_KEYS)(
    'are fingered by a rule that in %s puts the thumbs where the published tables do',
    (key) => {
      const [tonic, mode] = key.split(' ') as [string, string];
      const row = ARPEGGIO_FINGERINGS.find(({ keys }) => keys.includes(key))!;
      const triad = Chord.get(`${tonic}${mode === 'major' ? 'M' : 'm'}`).intervals;
      const names = [...triad, '8P', ...triad.map((one) => `${one}`)]
        .slice(0, 4)
        .map((one) => Note.transpose(`${tonic}4`, one));
      const two = [
        ...names.slice(0, 3),
        ...names.slice(0, 3).map((one) => Note.transpose(one, '8P')),
        Note.transpose(`${tonic}4`, '15P'),
      ];
      for (const hand of ['right', 'left'] as const) {
        const thumbs = (fingers: readonly number[]) =>
          fingers.flatMap((finger, at) => (finger === 1 ? [at] : []));
        expect(thumbs(triadFingers(two, hand))).toEqual(
          thumbs([...row[hand].replaceAll(' ', '')].map(Number)),
        );
      }
    },
  );

  // Root, first and second inversion of white keys; from memory, common practice, no source.
  it.each<readonly [Form, Hand, string]>([
    ['arpeggio-first-inversion', 'right', '1 2 4 1 2 4 5 4 2 1 4 2 1'],
    ['arpeggio-first-inversion', 'left', '5 4 2 1 4 2 1 2 4 1 2 4 5'],
    ['arpeggio-second-inversion', 'right', '1 2 4 1 2 4 5 4 2 1 4 2 1'],
    ['arpeggio-second-inversion', 'left', '5 3 2 1 3 2 1 2 3 1 2 3 5'],
  ])('%s in the %s hand has in C major the fingers %s', (form, hand, fingers) => {
    expect(fingersOf('C major', form, hand, 2)).toBe(fingers);
  });

  it('put the thumb on no black key where the triad has a white one', () => {
    for (const choice of allChoices().filter(
      ({ form, hands }) => form.startsWith('arpeggio-') && hands !== 'together',
    )) {
      const notes = buildExercise(choice).steps.map(({ notes: [note] }) => note!);
      if (notes.every(({ midi }) => isBlack(midi))) continue;
      expect(notes.filter(({ midi, finger }) => finger === 1 && isBlack(midi))).toEqual([]);
    }
  });
});

describe('chords of four notes, written out', () => {
  it('have the lowest note on top too, solid and broken', () => {
    const choice: ExerciseChoice = { key: 'C major', form: 'four-note-chords', hands: 'right', octaves: 1 };
    const up = 'C4+E4+G4+C5 E4+G4+C5+E5 G4+C5+E5+G5 C5+E5+G5+C6';
    expect(written(choice)).toBe(`${up} G4+C5+E5+G5 E4+G4+C5+E5 C4+E4+G4+C5`);
    expect(written({ ...choice, form: 'broken-four-note-chords' })).toBe(
      `${up.replaceAll('+', ' ')} G5 E5 C5 G4 E5 C5 G4 E4 C5 G4 E4 C4`,
    );
  });

  it('are two octaves apart in both hands, so that no key is wanted twice', () => {
    const exercise = buildExercise({
      key: 'C major',
      form: 'four-note-chords',
      hands: 'together',
      octaves: 1,
    });
    const [left, right] = (['left', 'right'] as const).map((hand) =>
      handOf(exercise, hand).map(([note]) => note!.midi),
    );
    expect(left).toEqual(right!.map((midi) => midi - 24));
    expect(new Set(exercise.steps.map(({ notes }) => notes.length))).toEqual(new Set([8]));
  });

  // From memory; common practice, no source.
  it('have the fingers 1235 1245 1245, in the left hand 5421 5421 5321', () => {
    expect(fingersOf('F major', 'four-note-chords', 'right')).toBe('1235 1245 1245 1235 1245 1245 1235');
    expect(fingersOf('F major', 'four-note-chords', 'left')).toBe('5421 5421 5321 5421 5321 5421 5421');
  });
});
