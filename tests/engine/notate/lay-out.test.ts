import { describe, expect, it } from 'vitest';
import { buildExercise, layOut } from '../../../src/engine/index.ts';
import type { LayOutOptions } from '../../../src/engine/index.ts';
import { inventedPassages } from '../../support/passages.ts';
import { createRandom } from '../../support/random.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import { perform } from '../../support/student/perform.ts';

/** "60 0.5": a key, and how long until the next, quarter notes. */
const played = (beatSec: number, ...notes: readonly (readonly [number | readonly number[], number])[]) => {
  let beat = 0;
  return notes.flatMap(([keys, beats]) => {
    const from = beat;
    beat += beats;
    return [keys].flat().map((midi) => ({ timeSec: 0.4 + from * beatSec, midi, releaseSec: null }));
  });
};
const laid = (notes: Parameters<typeof layOut>[0], options: Partial<LayOutOptions> = {}) =>
  layOut(notes, options)?.choice.passage?.notes.map(
    ({ name, hand, beat, beats }) => `${name} ${hand[0]} ${beat} ${beats}`,
  );

describe('a passage that was played once', () => {
  it('is laid out by its pulse: halves, sixteenths and triplets', () => {
    const third = 1 / 3;
    const notes = played(
      1.2,
      [60, 1],
      [64, 0.5],
      [67, 0.5],
      [72, 0.75],
      [71, 0.25],
      [69, third],
      [67, third],
      [65, third],
    );
    expect(laid(notes)).toEqual([
      'C4 r 0 1',
      'E4 r 1 0.5',
      'G4 r 1.5 0.5',
      'C5 r 2 0.75',
      'B4 r 2.75 0.25',
      'A4 r 3 0.3333',
      'G4 r 3.3333 0.3333',
      'F4 r 3.6667 0.3333',
    ]);
  });

  it('may begin before a beat, and stop without losing the beats after it', () => {
    const upbeat = played(1.2, [67, 0.5], [72, 1], [74, 1], [76, 1], [77, 1], [79, 2]);
    expect(laid(upbeat)?.slice(0, 2)).toEqual(['G4 r 0.5 0.5', 'C5 r 1 1']);
    const stop = [
      ...played(1.2, [60, 1], [62, 1], [64, 1], [65, 1]),
      { timeSec: 31.3, midi: 67, releaseSec: null },
    ];
    expect(laid(stop)).toHaveLength(5);
  });

  it('has chords together, a hand each by register, and what was let go long before the next as a rest', () => {
    const notes = [
      { timeSec: 1, midi: 48, releaseSec: 5.7 },
      { timeSec: 1.03, midi: 64, releaseSec: 2.1 },
      { timeSec: 1.05, midi: 67, releaseSec: 2.1 },
      { timeSec: 3.4, midi: 72, releaseSec: 4.5 },
      { timeSec: 4.6, midi: 71, releaseSec: 5.7 },
      { timeSec: 5.8, midi: 43, releaseSec: 7 },
      { timeSec: 5.8, midi: 74, releaseSec: 7 },
    ];
    expect(laid(notes)).toEqual([
      'C3 l 0 4',
      'E4 r 0 1',
      'G4 r 0 1',
      'C5 r 2 1',
      'B4 r 3 1',
      'G2 l 4 4',
      'D5 r 4 4',
    ]);
    expect(new Set(laid(notes, { hands: 'right' })?.map((note) => note.split(' ')[1]))).toEqual(
      new Set(['r']),
    );
  });

  it('has its rhythm left free where no tempo is said, and fills the bars of its metre', () => {
    const found = layOut(played(0.7, [60, 1.31], [62, 0.77], [[64, 67], 2.9], [65, 1]), {
      bpm: null,
      time: { count: 3, unit: 4 },
      title: 'Free',
    })!;
    expect(found.choice.passage).toMatchObject({ title: 'Free', bars: [{ beats: 3 }, { beats: 3 }] });
    expect(buildExercise(found.choice).steps.map(({ beat }) => beat)).toEqual([0, 1, 2, 3]);
  });

  it('is cut after sixteen bars, and says what lies beyond; of one moment there is none', () => {
    const long = layOut(played(1.2, ...Array.from({ length: 70 }, (_, at) => [60 + (at % 12), 1] as const)))!;
    expect(long.choice.passage!.bars).toHaveLength(16);
    expect(long.beyond).toBe(6);
    expect(layOut(played(1.2, [[60, 64, 67], 1]))).toBeNull();
    expect(layOut([])).toBeNull();
  });

  it('is the same whenever it begins, and an octave up an octave higher', () => {
    for (const choice of inventedPassages(6)) {
      const { strokes } = perform(
        buildExercise(choice),
        { ...STUDENT_DEFAULTS, bpm: 50, jitterMs: 20 },
        createRandom(5),
      );
      const notes = strokes
        .map(({ timeSec, midi }) => ({ timeSec, midi, releaseSec: null }))
        .sort((a, b) => a.timeSec - b.timeSec);
      const [here] = [layOut(notes, { hands: 'right' })!.choice.passage!.notes];
      const later = notes.map((note) => ({ ...note, timeSec: note.timeSec + 7.3, midi: note.midi + 12 }));
      const [there] = [layOut(later, { hands: 'right' })!.choice.passage!.notes];
      expect(there.map(({ beat, beats }) => [beat, beats])).toEqual(
        here.map(({ beat, beats }) => [beat, beats]),
      );
    }
  });
});
