import { describe, expect, it } from 'vitest';
import { ALL_KEYS, buildExercise } from '../../../src/engine/index.ts';
import { drawKeyboard, keyboardFigures } from '../../../src/ui/plots/keyboard/keys.ts';

const figure = (key: string, hands: 'left' | 'right' | 'together', form: 'arpeggio' | 'progression') =>
  keyboardFigures(buildExercise({ key, form, hands, octaves: form === 'arpeggio' ? 4 : 1 }));

describe('the keyboard', () => {
  it('has black keys where a piano has them: five an octave, none between B and C or E and F', () => {
    const [first] = figure('C major', 'right', 'arpeggio');
    const keys = drawKeyboard(first!, 1080).flatMap((row) => row.keys);
    const octave = keys.filter((key) => key.midi >= 60 && key.midi < 72);
    expect(
      octave
        .filter((key) => key.black)
        .map((key) => key.midi % 12)
        .sort((a, b) => a - b),
    ).toEqual([1, 3, 6, 8, 10]);
  });

  it('shows each key of the exercise once with its finger, and fits any width', () => {
    for (const key of ALL_KEYS)
      for (const widthPx of [280, 358, 720, 1080])
        for (const one of figure(key, 'together', 'arpeggio')) {
          const { notes } = one;
          const rows = drawKeyboard(one, widthPx);
          const marked = rows.flatMap((row) => row.keys.flatMap((drawn) => (drawn.note ? [drawn.midi] : [])));
          expect(marked.sort((a, b) => a - b)).toEqual(notes.map((note) => note.midi));
          for (const row of rows) {
            expect(row.widthPx).toBeLessThanOrEqual(widthPx);
            for (const drawn of row.keys) {
              expect(drawn.x).toBeGreaterThanOrEqual(0);
              expect(drawn.x + drawn.width).toBeLessThanOrEqual(row.widthPx);
            }
          }
        }
  });

  it('shows each different chord of a progression once: I, IV, V7', () => {
    expect(figure('A major', 'right', 'progression').map(({ label }) => label)).toEqual(['I', 'IV', 'V7']);
    expect(figure('A minor', 'together', 'progression')).toHaveLength(3);
  });

  it('gathers a broken triad into its shapes, each with its own fingers', () => {
    const shapes = keyboardFigures(
      buildExercise({ key: 'C major', form: 'broken-triads', hands: 'right', octaves: 1 }),
    );
    expect(shapes.map(({ notes }) => notes.map((note) => note.finger).join(''))).toEqual([
      '135',
      '125',
      '135',
      '135',
    ]);
  });

  it('draws nothing of nothing', () => {
    expect(drawKeyboard({ label: '', notes: [], fromMidi: 60, toMidi: 71 }, 300)).toEqual([]);
  });
});
