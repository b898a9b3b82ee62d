import { Chord, Key, Note } from 'tonal';
import { describe, expect, it } from 'vitest';
import { ALL_FORMS, ALL_KEYS, buildExercise } from '../../../src/engine/exercise/index.ts';
import type { Exercise, Form } from '../../../src/engine/exercise/index.ts';

const CADENCES = ALL_FORMS.filter((form) => form.startsWith('cadence'));
const ALL: readonly Exercise[] = CADENCES.flatMap((form) =>
  ALL_KEYS.map((key) => buildExercise({ key, form, hands: 'together', octaves: 1 })),
);
const written = (key: string, form: Form): string =>
  buildExercise({ key, form, hands: 'together', octaves: 1 })
    .steps.map(({ notes }) => notes.map(({ name }) => name).join('+'))
    .join(' ');

describe('a cadence with its bass in the left hand, written out', () => {
  // From memory, common practice, no source: three positions of the right hand, common tones kept.
  it.each<readonly [Form, string]>([
    ['cadence-fifth', 'C3+C4+E4+G4 F2+C4+F4+A4 C3+C4+E4+G4 G2+B3+D4+G4 C3+C4+E4+G4'],
    ['cadence-octave', 'C3+E4+G4+C5 F2+F4+A4+C5 C3+E4+G4+C5 G2+D4+G4+B4 C3+E4+G4+C5'],
    ['cadence-third', 'C3+G3+C4+E4 F2+A3+C4+F4 C3+G3+C4+E4 G2+G3+B3+D4 C3+G3+C4+E4'],
    ['cadence-seventh-fifth', 'C3+C4+E4+G4 F2+C4+F4+A4 C3+C4+E4+G4 G2+B3+F4+G4 C3+C4+E4+G4'],
    ['cadence-second-octave', 'C3+E4+G4+C5 F2+F4+A4+C5 F2+F4+A4+D5 G2+F4+G4+B4 C3+E4+G4+C5'],
  ])('%s in C major', (form, notes) => {
    expect(written('C major', form)).toBe(notes);
  });

  it('has in minor its own chords, and the leading note raised in V', () => {
    expect(written('A minor', 'cadence-second-third')).toBe(
      'A2+E3+A3+C4 D2+F3+A3+D4 D2+F3+B3+D4 E2+E3+G#3+D4 A2+E3+A3+C4',
    );
    const { title, steps } = buildExercise({
      key: 'A minor',
      form: 'cadence-second-third',
      hands: 'together',
      octaves: 1,
    });
    expect(steps.map(({ label }) => label)).toEqual(['i', 'iv', 'ii°6', 'V7', 'i']);
    expect(title).toBe('A minor · cadence i–iv–ii°6–V7–i over the bass, third on top · hands together');
  });

  // tonal 6.4: Key.majorKey and minorKey name the chords of the degrees.
  it('has in all keys the chords that the library tonal gives its degrees, nothing but their notes, root and third always', () => {
    for (const { choice, steps } of ALL) {
      const [tonic, mode] = choice.key.split(' ') as [string, string];
      const { chords } = mode === 'major' ? Key.majorKey(tonic) : Key.minorKey(tonic).harmonic;
      const degree = { I: 0, IV: 3, II6: 1, 'II°6': 1, V: 4, V7: 4 } as Readonly<Record<string, number>>;
      for (const { notes, label } of steps) {
        const seventh = Chord.get(chords[degree[label!.toUpperCase()]!]!).notes;
        const wanted = label === 'V7' ? seventh : seventh.slice(0, 3);
        const names = new Set(notes.map(({ name }) => Note.pitchClass(name)));
        expect([...names].filter((name) => !wanted.includes(name))).toEqual([]);
        expect(names).toContain(wanted[0]);
        expect(names).toContain(wanted[1]);
        const bass = Note.pitchClass(notes[0]!.name);
        expect(bass).toBe(wanted[label!.endsWith('6') ? 1 : 0]);
      }
    }
  });

  // The rules of four-part writing as every textbook of harmony has them; from memory.
  it('moves no two voices in parallel fifths or octaves, and resolves leading note and seventh by step', () => {
    const faults = ALL.flatMap(({ choice, steps }) =>
      steps.slice(1).flatMap(({ notes: to }, at) => {
        const from = steps[at]!.notes;
        return from.flatMap((low, voice) =>
          from.slice(voice + 1).flatMap((high, above) => {
            const [next, nextHigh] = [to[voice]!, to[voice + 1 + above]!];
            const before = (high.midi - low.midi) % 12;
            const after = (nextHigh.midi - next.midi) % 12;
            const both = low.midi !== next.midi && high.midi !== nextHigh.midi;
            return both && before === after && [0, 7].includes(before)
              ? [`${choice.key} ${choice.form} ${at}`]
              : [];
          }),
        );
      }),
    );
    expect(faults).toEqual([]);
    for (const { choice, steps } of ALL) {
      const tonic = Note.chroma(choice.key.split(' ')[0]!);
      const [dominant, last] = steps.slice(-2).map(({ notes }) => notes.slice(1));
      dominant!.forEach(({ midi }, voice) => {
        const above = (midi - tonic + 12) % 12;
        const moves = last![voice]!.midi - midi;
        if (above === 11) expect(moves).toBe(1);
        if (above === 5) expect([-1, -2]).toContain(moves);
      });
    }
  });

  it('lies within the hand: no chord of the right over a ninth, no leap of the bass over a fifth', () => {
    for (const { steps } of ALL) {
      for (const { notes } of steps) expect(notes.at(-1)!.midi - notes[1]!.midi).toBeLessThanOrEqual(14);
      const bass = steps.map(({ notes }) => notes[0]!.midi);
      expect(Math.max(...bass) - Math.min(...bass)).toBe(7);
    }
  });

  it('has in the right hand on top of its first chord what it is called by', () => {
    const interval = { fifth: 7, octave: 0, third: [3, 4] };
    for (const { choice, steps } of ALL) {
      const position = choice.form.split('-').at(-1) as keyof typeof interval;
      const above = (steps[0]!.notes.at(-1)!.midi - steps[0]!.notes[0]!.midi) % 12;
      expect([interval[position]].flat()).toContain(above);
    }
  });
});
