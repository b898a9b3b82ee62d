import { describe, expect, it } from 'vitest';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { attempt } from './simulated.ts';

// A piano 60–90 cents flat reads a semitone low and 40–10 cents sharp to a listener that knows no exercise: half a
// semitone is as far as a tuning can be told blind.
const D_MAJOR = { key: 'D major', octaves: 2 } as const;

describe('a piano far from its pitch', () => {
  it.each([
    [60, 40],
    [75, 25],
    [90, 10],
    [93, 7],
  ])('%i cents flat, read a semitone low, is put down to the tuning', (flat, tuningCents) => {
    const { heard, exercise } = attempt(D_MAJOR, {}, { readsOff: -1, tuningCents });
    const alignment = matchNotes(heard, exercise);
    expect(alignment.semitoneShift).toBe(1);
    expect(alignment.matched.every((note) => note.verdict === 'correct')).toBe(true);
    expect(alignment.remarks).toEqual([{ kind: 'read-a-semitone-off', cents: -flat }]);
    expect(alignment.betterFit).toBeUndefined();
  });

  it('is put down to the tuning in a chromatic scale too, which fits nearly as well a semitone off', () => {
    for (const octaves of [1, 2, 4] as const) {
      const chromatic = { key: 'D major', form: 'chromatic', octaves } as const;
      const { heard, exercise } = attempt(chromatic, {}, { readsOff: -1, tuningCents: 30 });
      const alignment = matchNotes(heard, exercise);
      expect(alignment.remarks).toEqual([{ kind: 'read-a-semitone-off', cents: -70 }]);
      expect(alignment.matched.every((note) => note.verdict === 'correct')).toBe(true);
    }
  });

  it('is put down to the tuning in a chromatic scale with mistakes too', () => {
    for (const octaves of [1, 2, 4] as const) {
      const chromatic = { key: 'D major', form: 'chromatic', octaves } as const;
      const { heard, exercise } = attempt(chromatic, {}, { readsOff: -1, tuningCents: 30 });
      const notes = heard.notes
        .filter((_, at) => at !== 5)
        .map((note, at) => (at === 9 ? { ...note, midi: note.midi + 3 } : note));
      const alignment = matchNotes({ ...heard, notes }, exercise);
      expect(alignment.semitoneShift).toBe(1);
      expect(alignment.matched.filter(({ verdict }) => verdict !== 'correct')).toHaveLength(2);
    }
  });

  it('keeps its mistakes where they were read at the right pitch', () => {
    const chromatic = { key: 'D major', form: 'chromatic', octaves: 1 } as const;
    const { heard, exercise } = attempt(chromatic, {}, { tuningCents: 30 });
    const notes = heard.notes.map((note, at) => (at === 7 ? { ...note, midi: note.midi + 3 } : note));
    expect(matchNotes({ ...heard, notes }, exercise)).toMatchObject({ semitoneShift: 0 });
  });

  it('is not made out of wrong keys: half of them a semitone low are as many mistakes', () => {
    const { heard, exercise } = attempt(D_MAJOR, {}, { tuningCents: 30 });
    const notes = heard.notes.map((note, at) => (at % 2 === 0 ? { ...note, midi: note.midi - 1 } : note));
    const { semitoneShift, matched } = matchNotes({ ...heard, notes }, exercise);
    expect(semitoneShift).toBe(0);
    expect(matched.map(({ verdict }) => verdict)).toEqual(
      notes.map((_, at) => (at % 2 === 0 ? 'wrong' : 'correct')),
    );
  });

  it.each([-45, -20, 0, 6])('a semitone low on a piano of %i cents is another key', (tuningCents) => {
    const { heard, exercise } = attempt(D_MAJOR, {}, { readsOff: -1, tuningCents });
    const alignment = matchNotes(heard, exercise);
    expect(alignment.semitoneShift).toBe(0);
    expect(alignment.betterFit?.choice.key).toBe('Db major');
  });

  it.each([
    [40, -60],
    [43, -57],
  ])('%i cents sharp, read a semitone high, is put down to the tuning', (sharp, tuningCents) => {
    const { heard, exercise } = attempt(D_MAJOR, {}, { readsOff: 1, tuningCents });
    expect(matchNotes(heard, exercise).remarks).toEqual([{ kind: 'read-a-semitone-off', cents: sharp }]);
  });

  it.each([-45, 0, 20])(
    'a semitone high on a piano of %i cents is another key: none stands so sharp',
    (tuningCents) => {
      const { heard, exercise } = attempt(D_MAJOR, {}, { readsOff: 1, tuningCents });
      expect(matchNotes(heard, exercise).betterFit?.choice.key).toBe('Eb major');
    },
  );

  it('a piano 30 cents flat, read right, stays as it is read', () => {
    const { heard, exercise } = attempt(D_MAJOR, {}, { tuningCents: -30 });
    expect(matchNotes(heard, exercise)).toMatchObject({ semitoneShift: 0, remarks: [] });
  });
});
