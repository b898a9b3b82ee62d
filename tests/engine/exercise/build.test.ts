import fc from 'fast-check';
import { Note } from 'tonal';
import { describe, expect, it } from 'vitest';
import { HIGHEST_KEY, LOWEST_KEY } from '../../../src/engine/base/units.ts';
import { ALL_KEYS, allChoices, buildExercise, isCadence } from '../../../src/engine/exercise/index.ts';
import type { Exercise, ExerciseChoice, ExpectedNote } from '../../../src/engine/exercise/index.ts';

const EXERCISES = allChoices().map(buildExercise);

const allNotes = (exercise: Exercise): readonly ExpectedNote[] =>
  exercise.steps.flatMap(({ notes }) => notes);
const midisByStep = (exercise: Exercise) => exercise.steps.map(({ notes }) => notes.map(({ midi }) => midi));
const names = (choice: ExerciseChoice) =>
  buildExercise(choice)
    .steps.map(({ notes }) => notes.map(({ name }) => name).join('+'))
    .join(' ');

describe('an exercise written out', () => {
  it.each<readonly [string, ExerciseChoice, string]>([
    [
      'an arpeggio up and down, the top once',
      { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 1 },
      'D4 F#4 A4 D5 A4 F#4 D4',
    ],
    [
      'a scale, with A major’s G sharp',
      { key: 'A major', form: 'scale', hands: 'left', octaves: 1 },
      'A2 B2 C#3 D3 E3 F#3 G#3 A3 G#3 F#3 E3 D3 C#3 B2 A2',
    ],
    [
      'a melodic minor, which comes down natural',
      { key: 'C minor', form: 'scale', hands: 'right', octaves: 1, minorScale: 'melodic' },
      'C4 D4 Eb4 F4 G4 A4 B4 C5 Bb4 Ab4 G4 F4 Eb4 D4 C4',
    ],
    [
      'a harmonic minor with its double sharp',
      { key: 'G# minor', form: 'scale', hands: 'right', octaves: 1 },
      'G#3 A#3 B3 C#4 D#4 E4 F##4 G#4 F##4 E4 D#4 C#4 B3 A#3 G#3',
    ],
    [
      'B sharp, which belongs to the octave below the C that it sounds as',
      { key: 'C# minor', form: 'scale', hands: 'right', octaves: 1 },
      'C#4 D#4 E4 F#4 G#4 A4 B#4 C#5 B#4 A4 G#4 F#4 E4 D#4 C#4',
    ],
    [
      'C flat, which belongs to the octave above the B that it sounds as',
      { key: 'Eb minor', form: 'scale', hands: 'right', octaves: 1, minorScale: 'natural' },
      'Eb4 F4 Gb4 Ab4 Bb4 Cb5 Db5 Eb5 Db5 Cb5 Bb4 Ab4 Gb4 F4 Eb4',
    ],
    [
      'the tonic triad and its inversions, seven chords',
      { key: 'C major', form: 'triads', hands: 'right', octaves: 1 },
      'C4+E4+G4 E4+G4+C5 G4+C5+E5 C5+E5+G5 G4+C5+E5 E4+G4+C5 C4+E4+G4',
    ],
    [
      'the broken triads, four positions upward and three downward',
      { key: 'C major', form: 'broken-triads', hands: 'right', octaves: 1 },
      'C4 E4 G4 E4 G4 C5 G4 C5 E5 C5 E5 G5 E5 C5 G4 C5 G4 E4 G4 E4 C4',
    ],
    [
      'the progression CEG-CFA-CEG-BFG-CEG',
      { key: 'C major', form: 'progression', hands: 'right', octaves: 1 },
      'C4+E4+G4 C4+F4+A4 C4+E4+G4 B3+F4+G4 C4+E4+G4',
    ],
    [
      'the minor progression with the raised leading note, both hands',
      { key: 'A minor', form: 'progression', hands: 'together', octaves: 1 },
      'A2+C3+E3+A3+C4+E4 A2+D3+F3+A3+D4+F4 A2+C3+E3+A3+C4+E4 G#2+D3+E3+G#3+D4+E4 A2+C3+E3+A3+C4+E4',
    ],
  ])('is %s', (_, choice, written) => {
    expect(names(choice)).toBe(written);
  });

  // Scientific pitch notation: C4 is MIDI note 60, and the number changes between B and C, whatever they sound as.
  it('gives each note the MIDI number of its name', () => {
    for (const exercise of EXERCISES) {
      const notes = allNotes(exercise);
      expect(notes.map(({ midi }) => midi)).toEqual(notes.map(({ name }) => Note.midi(name)));
    }
  });

  it('stays on the 88 keys', () => {
    for (const exercise of EXERCISES) {
      const midis = allNotes(exercise).map(({ midi }) => midi);
      expect(Math.min(...midis)).toBeGreaterThanOrEqual(LOWEST_KEY);
      expect(Math.max(...midis)).toBeLessThanOrEqual(HIGHEST_KEY);
    }
  });

  // Where books of scales and arpeggios begin each hand; common practice, from memory.
  it.each([
    ['B♭', 'Bb major', 'arpeggio', 2, 'Bb3', 'Bb2'],
    ['G', 'G major', 'scale', 2, 'G3', 'G2'],
    ['F♯', 'F# minor', 'scale', 1, 'F#4', 'F#3'],
    ['C', 'C major', 'arpeggio', 2, 'C4', 'C3'],
    ['C over four octaves', 'C major', 'scale', 4, 'C3', 'C2'],
    ['A over three octaves', 'A minor', 'arpeggio', 3, 'A2', 'A1'],
  ] as const)('begins where books have it, in %s', (_, key, form, octaves, right, left) => {
    const first = (hands: 'left' | 'right') =>
      allNotes(buildExercise({ key, form, octaves, hands }))[0]!.name;
    expect([first('right'), first('left')]).toEqual([right, left]);
  });

  it('starts the right hand from the G below middle C to the F sharp above it, an octave lower for three and four octaves', () => {
    const elsewhere = ({ form }: ExerciseChoice) =>
      form === 'tenths-apart' || form === 'double-sixths' || form.startsWith('cadence');
    for (const exercise of EXERCISES.filter(({ choice }) => choice.hands === 'right' && !elsewhere(choice))) {
      const lowest = exercise.choice.octaves >= 3 ? 43 : 55;
      expect(Math.floor((allNotes(exercise)[0]!.midi - lowest) / 12)).toBe(0);
    }
  });

  it('needs no 8va that a lower octave would spare: nothing lies above the F sharp two octaves over the right hand’s highest tonic, but a third or an octave on it', () => {
    const above = {
      'tenths-apart': 4,
      'thirds-apart': 4,
      'double-thirds': 4,
      'scale-in-octaves': 12,
      'double-sixths': 12,
    } as Readonly<Record<string, number>>;
    for (const exercise of EXERCISES.filter(({ choice }) => choice.octaves <= 2))
      expect(Math.max(...allNotes(exercise).map(({ midi }) => midi))).toBeLessThanOrEqual(
        66 + 24 + (above[exercise.choice.form] ?? 0),
      );
  });

  // The pairs of the circle of fifths that share their keys on the piano; common practice, from memory.
  it.each([
    ['Cb major', 'B major'],
    ['Gb major', 'F# major'],
    ['C# major', 'Db major'],
    ['Ab minor', 'G# minor'],
    ['D# minor', 'Eb minor'],
    ['A# minor', 'Bb minor'],
  ])('in %s lies on the same keys, under the same fingers, as in %s', (key, twin) => {
    const unnamed = (exercise: Exercise) =>
      exercise.steps.map(({ notes, crossings }) => ({
        notes: notes.map(({ midi, hand, finger }) => ({ midi, hand, finger })),
        crossings,
      }));
    for (const exercise of EXERCISES.filter(({ choice }) => choice.key === twin)) {
      const other = buildExercise({ ...exercise.choice, key });
      expect(unnamed(other)).toEqual(unnamed(exercise));
      expect(other.title).not.toBe(exercise.title);
    }
  });

  it('is the same in any key of a mode but for its place on the keyboard', () => {
    const shape = (exercise: Exercise) => {
      const midis = midisByStep(exercise);
      return midis.map((step) => step.map((midi) => midi - midis[0]![0]!));
    };
    fc.assert(
      fc.property(fc.constantFrom(...EXERCISES), fc.constantFrom(...ALL_KEYS), (exercise, key) => {
        fc.pre(exercise.choice.key.endsWith('major') === key.endsWith('major'));
        expect(shape(buildExercise({ ...exercise.choice, key }))).toEqual(shape(exercise));
      }),
    );
  });

  it('comes down as it went up, except the melodic minor', () => {
    for (const exercise of EXERCISES) {
      const { form, minorScale } = exercise.choice;
      if (isCadence(form) || form.startsWith('broken') || minorScale === 'melodic') continue;
      const midis = midisByStep(exercise);
      expect([...midis].reverse()).toEqual(midis);
    }
  });

  it('has 6 steps an octave in arpeggios, 8 in those of sevenths, 14 in scales, 24 in chromatic ones, and one more; 7 chords, 21 or 28 broken notes, 5 chords of a cadence, 9 notes for five fingers', () => {
    for (const { choice, steps } of EXERCISES) {
      const arpeggio = 6 * choice.octaves + 1;
      const scale = 14 * choice.octaves + 1;
      const counts: Readonly<Partial<Record<ExerciseChoice['form'], number>>> = {
        arpeggio,
        'arpeggio-first-inversion': arpeggio,
        'arpeggio-second-inversion': arpeggio,
        scale,
        'contrary-motion': scale,
        'two-octaves-apart': scale,
        'tenths-apart': scale,
        'sixths-apart': scale,
        'thirds-apart': scale,
        'double-thirds': scale,
        'double-sixths': scale,
        'scale-in-octaves': scale,
        'four-note-chords': 7,
        'broken-four-note-chords': 28,
        triads: 7,
        'broken-triads': 21,
        progression: 5,
        'dominant-seventh': 8 * choice.octaves + 1,
        'diminished-seventh': 8 * choice.octaves + 1,
        chromatic: 24 * choice.octaves + 1,
        'five-finger': 9,
        passage: 0,
      };
      expect(steps).toHaveLength(counts[isCadence(choice.form) ? 'progression' : choice.form]!);
    }
  });

  it('counts steps from 0, and beats by two notes, three, four or one a beat', () => {
    const others = { 'broken-triads': 3, triads: 1, 'four-note-chords': 1 };
    const fours = ['dominant-seventh', 'diminished-seventh', 'chromatic', 'broken-four-note-chords'];
    const notesABeat = (form: ExerciseChoice['form']): number =>
      fours.includes(form)
        ? 4
        : ((others as Readonly<Record<string, number>>)[form] ?? (isCadence(form) ? 1 : 2));
    for (const { choice, steps } of EXERCISES) {
      const indexes = steps.map((_, index) => index);
      expect(steps.map(({ step }) => step)).toEqual(indexes);
      expect(steps.map(({ beat }) => beat)).toEqual(indexes.map((index) => index / notesABeat(choice.form)));
    }
  });

  it('marks the one highest place as the turn; a progression has none, nor have hands that go apart', () => {
    for (const { choice, steps } of EXERCISES) {
      const tops = steps.map(({ notes }) => notes.at(-1)!.midi);
      const highest = steps.map((_, index) => tops[index] === Math.max(...tops));
      const turns = steps.map(({ turn }) => turn);
      const hasNone = isCadence(choice.form) || choice.form === 'contrary-motion';
      expect(turns).toEqual(hasNone ? steps.map(() => false) : highest);
    }
  });

  it('names chords and positions, and nothing in runs', () => {
    const labels = (form: ExerciseChoice['form'], key: string) =>
      buildExercise({ key, form, hands: 'left', octaves: 1 }).steps.map(({ label }) => label ?? '-');
    expect(labels('progression', 'G major')).toEqual(['I', 'IV', 'I', 'V7', 'I']);
    expect(labels('progression', 'G minor')).toEqual(['i', 'iv', 'i', 'V7', 'i']);
    const positions = ['root position', 'first inversion', 'second inversion', 'root position'];
    const there = [...positions, 'second inversion', 'first inversion', 'root position'];
    expect(labels('triads', 'G minor')).toEqual(there);
    expect(labels('broken-triads', 'G minor').filter((_, index) => index % 3 === 0)).toEqual(there);
    expect(new Set([...labels('scale', 'G major'), ...labels('arpeggio', 'G major')])).toEqual(
      new Set(['-']),
    );
  });
});

describe('hands together', () => {
  const together = EXERCISES.filter(({ choice }) => choice.hands === 'together');

  /** The left hand so many semitones below the right, where both do the same. */
  const apart = (form: ExerciseChoice['form']): number =>
    [
      'two-octaves-apart',
      'scale-in-octaves',
      'double-sixths',
      'four-note-chords',
      'broken-four-note-chords',
    ].includes(form)
      ? 24
      : 12;
  const eachItsOwn = ['contrary-motion', 'tenths-apart', 'thirds-apart', 'sixths-apart'];

  it('is each hand’s own part, the left an octave below the right, or two', () => {
    for (const { choice, steps } of together.filter(
      ({ choice: { form } }) => !eachItsOwn.includes(form) && !form.startsWith('cadence'),
    )) {
      const left = buildExercise({ ...choice, hands: 'left' });
      const right = buildExercise({ ...choice, hands: 'right' });
      expect(steps).toEqual(
        left.steps.map((step, index) => ({
          ...step,
          notes: [...step.notes, ...right.steps[index]!.notes],
          crossings: [...step.crossings, ...right.steps[index]!.crossings],
        })),
      );
      const octaveHigher = midisByStep(left).map((step) => step.map((midi) => midi + apart(choice.form)));
      expect(octaveHigher).toEqual(midisByStep(right));
    }
  });

  it('lists the notes of a step from low to high, no key twice', () => {
    for (const exercise of EXERCISES) {
      const steps = midisByStep(exercise);
      expect(steps).toEqual(steps.map((step) => [...new Set(step)].sort((a, b) => a - b)));
    }
  });
});

describe('fingers', () => {
  const oneHandRuns = EXERCISES.filter(
    ({ choice }) => (choice.form === 'arpeggio' || choice.form === 'scale') && choice.hands !== 'together',
  );
  const fingersOf = (exercise: Exercise) => allNotes(exercise).map(({ finger }) => finger);

  it('are 1 to 5', () => {
    const used = new Set(EXERCISES.flatMap(fingersOf));
    expect([...used].sort()).toEqual([1, 2, 3, 4, 5]);
  });

  it('do not play two keys of one chord', () => {
    for (const { steps } of EXERCISES) {
      const fingers = steps.map(({ notes }) => notes.map(({ hand, finger }) => `${hand} ${finger}`));
      expect(fingers.map((chord) => new Set(chord).size)).toEqual(fingers.map((chord) => chord.length));
    }
  });

  // The general rule of fingering, common practice, no source: the thumb goes on a white key. The arpeggios of F♯ major
  // and E♭ minor have black keys only.
  it('put the thumb on white keys in every run that has white keys', () => {
    const isWhite = ({ midi }: ExpectedNote) => [0, 2, 4, 5, 7, 9, 11].includes(midi % 12);
    const onBlackOnly = oneHandRuns.filter((exercise) => !allNotes(exercise).some(isWhite));
    expect(new Set(onBlackOnly.map(({ choice }) => `${choice.key} ${choice.form}`))).toEqual(
      new Set(['F# major arpeggio', 'Eb minor arpeggio']),
    );
    for (const exercise of oneHandRuns.filter((run) => !onBlackOnly.includes(run))) {
      const thumbs = allNotes(exercise).filter(({ finger }) => finger === 1);
      expect(thumbs.filter((note) => !isWhite(note))).toEqual([]);
      expect(thumbs.length).toBeGreaterThan(0);
    }
  });

  it('are the same on the way down as on the way up, except in the melodic minor', () => {
    for (const exercise of oneHandRuns.filter(({ choice }) => choice.minorScale !== 'melodic')) {
      const fingers = fingersOf(exercise);
      expect([...fingers].reverse()).toEqual(fingers);
    }
  });

  it('come down in the melodic minor as in the natural minor', () => {
    for (const exercise of oneHandRuns.filter(({ choice }) => choice.minorScale === 'melodic')) {
      const natural = buildExercise({ ...exercise.choice, minorScale: 'natural' });
      const top = exercise.steps.findIndex(({ turn }) => turn);
      expect(exercise.steps.slice(top + 1)).toEqual(natural.steps.slice(top + 1));
      expect(fingersOf(exercise).slice(top)).toEqual(fingersOf(natural).slice(top));
    }
  });

  it('are the same in every octave after the first', () => {
    for (const exercise of oneHandRuns.filter(({ choice }) => choice.octaves >= 3)) {
      const perOctave = exercise.choice.form === 'scale' ? 7 : 3;
      const up = fingersOf(exercise).slice(perOctave, perOctave * exercise.choice.octaves);
      expect(up.slice(perOctave)).toEqual(up.slice(0, -perOctave));
    }
  });

  // As read: triads right 135 125 135, left 531 531 521; progression left 531 521 531 521 531, right (memory)
  // 135 135 135 145 135.
  it.each([
    ['triads', 'right', '135 125 135 135 135 125 135'],
    ['triads', 'left', '531 531 521 531 521 531 531'],
    ['progression', 'right', '135 135 135 145 135'],
    ['progression', 'left', '531 521 531 521 531'],
  ] as const)('of %s in the %s hand are those of the tables', (form, hands, table) => {
    const { steps } = buildExercise({ key: 'E major', form, hands, octaves: 1 });
    expect(steps.map(({ notes }) => notes.map(({ finger }) => finger).join('')).join(' ')).toBe(table);
  });
});
