import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/index.ts';
import type { ExerciseChoice, OwnPassage } from '../../../src/engine/index.ts';
import type { StaffEvent } from '../../../src/ui/plots/staff/bars.ts';
import { barsOf } from '../../../src/ui/plots/staff/written.ts';
import { inventedPassages } from '../../support/passages.ts';

const BEATS = { w: 4, h: 2, q: 1, 8: 1 / 2, 16: 1 / 4, 32: 1 / 8 } as const;
const lengthOf = ({ duration, dots, triplet, rest }: StaffEvent, barBeats: number): number =>
  rest === true && duration === 'w'
    ? barBeats
    : (BEATS[duration] * (dots === 1 ? 1.5 : 1)) / (triplet === undefined ? 1 : 1.5);

describe('a passage on the staff', () => {
  it('fills every bar of every hand, whatever its metre and rhythm', () => {
    for (const choice of inventedPassages(30)) {
      const bars = barsOf(buildExercise(choice));
      expect(bars).toHaveLength(choice.passage!.bars.length);
      bars.forEach((bar, at) => {
        const { beats } = choice.passage!.bars[at]!;
        for (const { events } of bar.parts)
          expect(events.reduce((sum, event) => sum + lengthOf(event, beats), 0)).toBeCloseTo(beats, 2);
      });
    }
  });

  it('strikes every note once, and ties what goes on', () => {
    for (const choice of inventedPassages(30)) {
      const exercise = buildExercise(choice);
      const events = barsOf(exercise).flatMap(({ parts }) => parts.flatMap((part) => part.events));
      const struck = events.filter(({ rest, tie }) => rest !== true && tie !== 'from' && tie !== 'through');
      const written = exercise.steps.flatMap(({ notes }) =>
        notes.flatMap((note) => (note.leftFinger === undefined ? [note] : [note, note])),
      );
      expect(struck.reduce((sum, { keys }) => sum + keys.length, 0)).toBe(written.length);
    }
  });

  const NOTES = (...rows: readonly (readonly [string, number, number])[]): OwnPassage['notes'] =>
    rows.map(([name, beat, beats]) => ({ name, hand: 'right', beat, beats }));
  const shown = (notes: OwnPassage['notes'], bars = 2): readonly string[] => {
    const choice: ExerciseChoice = {
      key: 'C major',
      form: 'passage',
      hands: 'right',
      octaves: 1,
      passage: {
        title: '',
        bars: Array.from({ length: bars }, () => ({ beats: 4, count: 4, unit: 4 })),
        notes,
      },
    };
    return barsOf(buildExercise(choice)).map((bar) =>
      bar.parts[0]!.events.map(({ keys, duration, dots, rest, tie, triplet }) => {
        const what = rest === true ? 'rest' : keys[0]!;
        return `${what} ${duration}${dots === 1 ? '.' : ''}${tie === undefined ? '' : ` ${tie}`}${triplet === undefined ? '' : ' 3'}`;
      }).join(', '),
    );
  };

  it('is written as a musician writes it: dots, syncopations, ties over the bar, rests, triplets', () => {
    expect(shown(NOTES(['C4', 0, 1.5], ['D4', 1.5, 0.5], ['E4', 2, 2], ['F4', 4, 4]))).toEqual([
      'c/4 q., d/4 8, e/4 h',
      'f/4 w',
    ]);
    expect(shown(NOTES(['C4', 0, 0.5], ['D4', 0.5, 1], ['E4', 1.5, 0.5], ['F4', 3, 3]))).toEqual([
      'c/4 8, d/4 q, e/4 8, rest q, f/4 q on',
      'f/4 h from, rest h',
    ]);
    expect(
      shown(NOTES(['C4', 0, 1 / 3], ['D4', 1 / 3, 1 / 3], ['E4', 2 / 3, 1 / 3], ['F4', 1, 1]), 1),
    ).toEqual(['c/4 8 3, d/4 8 3, e/4 8 3, f/4 q, rest h']);
  });

  it('writes the metre once, and again where it changes', () => {
    const [choice] = inventedPassages(1);
    const passage = choice!.passage!;
    const bars = passage.bars.map((bar, at) => (at === 2 ? { ...bar, count: 2, unit: 2 as const } : bar));
    const times = barsOf(buildExercise({ ...choice!, passage: { ...passage, bars } })).map(
      ({ time }) => time,
    );
    expect(times).toEqual(['4/4', undefined, '2/2', '4/4']);
  });
});
