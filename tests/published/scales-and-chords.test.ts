import { Chord, Note, Scale } from 'tonal';
import { describe, expect, it } from 'vitest';
import { ALL_KEYS, buildExercise, keyFacts } from '../../src/engine/exercise/index.ts';
import type { Form } from '../../src/engine/exercise/index.ts';
import { MAJOR_KEYS_BY_MUSIC21, MINOR_KEYS_BY_MUSIC21 } from './keys-by-music21.ts';

describe('scales and primary chords are spelt as music21 spells them', () => {
  it('for all 24 keys', () => {
    const keys = [...MAJOR_KEYS_BY_MUSIC21, ...MINOR_KEYS_BY_MUSIC21].map(([key]) => key);
    expect([...keys].sort()).toEqual([...ALL_KEYS].sort());
  });

  it.each(MAJOR_KEYS_BY_MUSIC21)('in %s', (key, signature, scale, tonic, subdominant, dominantSeventh) => {
    const facts = keyFacts(key);
    expect(facts.signature.join(' ')).toBe(signature);
    expect(facts.scale.join(' ')).toBe(scale);
    expect(facts.minorScales).toBeUndefined();
    expect(facts.triad.join(' ')).toBe(tonic);
    expect(facts.primaryChords.map(({ numeral, notes }) => [numeral, notes.join(' ')])).toEqual([
      ['I', tonic],
      ['IV', subdominant],
      ['V7', dominantSeventh],
    ]);
  });

  it.each(MINOR_KEYS_BY_MUSIC21)(
    'in %s',
    (key, signature, natural, harmonic, melodic, tonic, subdominant, dominantSeventh) => {
      const facts = keyFacts(key);
      expect(facts.signature.join(' ')).toBe(signature);
      expect(facts.scale.join(' ')).toBe(natural);
      expect(facts.minorScales?.natural.join(' ')).toBe(natural);
      expect(facts.minorScales?.harmonic.join(' ')).toBe(harmonic);
      expect(facts.minorScales?.melodic.join(' ')).toBe(melodic);
      expect(facts.triad.join(' ')).toBe(tonic);
      expect(facts.primaryChords.map(({ numeral, notes }) => [numeral, notes.join(' ')])).toEqual([
        ['i', tonic],
        ['iv', subdominant],
        ['V7', dominantSeventh],
      ]);
    },
  );
});

describe('the dominant seventh', () => {
  /** Published list of twelve dominant sevenths, read on killerplrarticles.com, "Those dominating dominant sevenths". */
  it.each([
    ['C major', 'G B D F'],
    ['C# major', 'G# B# D# F#'],
    ['D major', 'A C# E G'],
    ['Eb major', 'Bb D F Ab'],
    ['E major', 'B D# F# A'],
    ['F major', 'C E G Bb'],
    ['F# major', 'C# E# G# B'],
    ['G major', 'D F# A C'],
    ['Ab major', 'Eb G Bb Db'],
    ['A major', 'E G# B D'],
    ['Bb major', 'F A C Eb'],
    ['B major', 'F# A# C# E'],
  ])('of %s is %s', (key, notes) => {
    expect(keyFacts(key).primaryChords[2]?.notes.join(' ')).toBe(notes);
  });

  it.each(ALL_KEYS)('of %s is what a chord dictionary builds on its fifth degree', (key) => {
    const [root, ...others] = keyFacts(key).primaryChords[2]!.notes;
    expect([root, ...others]).toEqual(Chord.getChord('7', root!).notes);
  });
});

describe('arpeggios of seventh chords', () => {
  const chordOf = (form: Form, key: string): readonly string[] =>
    buildExercise({ key, form, hands: 'right', octaves: 1 })
      .steps.slice(0, 4)
      .map(({ notes }) => notes[0]!.name.replace(/\d/, ''));

  it.each(ALL_KEYS)(
    'of %s are what a chord dictionary builds on the dominant and on the leading note',
    (key) => {
      const tonic = key.split(' ')[0]!;
      const dominant = Chord.getChord('7', Note.transpose(tonic, '5P')).notes;
      const leading = Chord.getChord('dim7', Note.transpose(tonic, '7M')).notes;
      expect(chordOf('dominant-seventh', key)).toEqual(dominant);
      expect(chordOf('diminished-seventh', key)).toEqual(leading);
    },
  );
});

describe('the chromatic scale', () => {
  it.each(ALL_KEYS)(
    'of %s has the keys that a scale dictionary has, every one a semitone above the last',
    (key) => {
      const tonic = key.split(' ')[0]!;
      const { steps } = buildExercise({ key, form: 'chromatic', hands: 'left', octaves: 1 });
      const up = steps.slice(0, 13).map(({ notes }) => notes[0]!);
      const listed = Scale.get(`${tonic} chromatic`).notes.map((name) => Note.chroma(name));
      expect(up.slice(0, 12).map(({ midi }) => midi % 12)).toEqual(listed);
      expect(up.map(({ midi }) => midi - up[0]!.midi)).toEqual(Array.from({ length: 13 }, (_, n) => n));
      expect(up.map(({ name, midi }) => Note.midi(name) === midi)).not.toContain(false);
    },
  );
});

describe('the five-finger pattern', () => {
  it.each(ALL_KEYS)('of %s is the first five degrees of its scale, a finger each', (key) => {
    const { steps } = buildExercise({ key, form: 'five-finger', hands: 'right', octaves: 1 });
    const names = steps.map(({ notes }) => notes[0]!.name.replace(/\d/, ''));
    const five = keyFacts(key).scale.slice(0, 5);
    expect(names).toEqual([...five, ...five.slice(0, 4).reverse()]);
    expect(steps.map(({ notes }) => notes[0]!.finger)).toEqual([1, 2, 3, 4, 5, 4, 3, 2, 1]);
  });
});

describe('the progression in close position', () => {
  const chords = (key: string) =>
    buildExercise({ key, form: 'progression', hands: 'right', octaves: 1 }).steps.map(({ notes }) => notes);

  /**
   * De Anza College, Music 12A, handout 10 (I V7 I): the root moves down a half step, the third up a half step, the
   * fifth is repeated. A published page on I IV I V7 I: the bottom note stays, the middle one moves up a half step,
   * the top one a whole step. In minor the third is a half step lower, so it moves a whole step; the top one moves a
   * half step (the sixth degree is minor).
   */
  it.each(ALL_KEYS)('moves by the published hand shapes in %s', (key) => {
    const midis = chords(key).map((notes) => notes.map(({ midi }) => midi));
    const moves = (from: number, to: number) => midis[to]!.map((midi, index) => midi - midis[from]![index]!);
    const major = key.endsWith('major');
    expect(moves(0, 1)).toEqual(major ? [0, 1, 2] : [0, 2, 1]);
    expect(moves(0, 3)).toEqual(major ? [-1, 1, 0] : [-1, 2, 0]);
    expect(midis[2]).toEqual(midis[0]);
    expect(midis[4]).toEqual(midis[0]);
  });

  it.each([...MAJOR_KEYS_BY_MUSIC21, ...MINOR_KEYS_BY_MUSIC21])(
    'uses the notes of the primary chords in %s, and no fifth in V7',
    (key, ...row) => {
      const [tonic, subdominant, dominantSeventh] = row.slice(-3).map((notes) => notes!.split(' '));
      const played = chords(key).map((notes) => notes.map(({ name }) => name.replace(/\d/, '')).sort());
      const [root, third, , seventh] = dominantSeventh!;
      expect(played[0]).toEqual([...tonic!].sort());
      expect(played[1]).toEqual([...subdominant!].sort());
      expect(played[3]).toEqual([root!, third!, seventh!].sort());
    },
  );
});
