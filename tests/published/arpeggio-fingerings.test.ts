import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../src/engine/exercise/index.ts';
import type { Hand } from '../../src/engine/exercise/index.ts';

function fingersUp(key: string, hands: Hand, octaves: number): string {
  const { steps } = buildExercise({ key, form: 'arpeggio', hands, octaves });
  return steps
    .slice(0, 3 * octaves + 1)
    .map(({ notes }) => notes[0]!.finger)
    .join('');
}

/** Two octaves up, as read in four published teachers' tables (B, E, V, L) and set down in our fingering notes. */
const READ_TABLES: readonly (readonly [keys: string, right: string, left: string])[] = [
  ['C major, G major, F major', '1231235', '5421421'],
  ['D major, A major, E major, B major', '1231235', '5321321'],
  ['F# major', '1231235', '5321321'],
  ['Db major', '4124124', '2142142'],
  ['Ab major, Eb major', '4124124', '2142142'],
  ['Bb major', '2124124', '3213213'],
  ['C minor, F minor, G minor', '1231235', '5421421'],
  ['D minor, E minor, A minor, B minor', '1231235', '5421421'],
  ['F# minor, C# minor, G# minor', '4124124', '2142142'],
  ['Eb minor', '1231235', '5421421'],
  ['Bb minor', '2312312', '3213213'],
];
const ROWS = READ_TABLES.flatMap(([keys, right, left]) =>
  keys.split(', ').map((key) => [key, right, left] as const),
);

describe('arpeggio fingerings against the tables that were read', () => {
  it('covers all 24 keys', () => {
    expect(new Set(ROWS.map(([key]) => key)).size).toBe(24);
  });

  it.each(ROWS)('agrees in %s over two octaves', (key, right, left) => {
    expect(fingersUp(key, 'right', 2)).toBe(right);
    expect(fingersUp(key, 'left', 2)).toBe(left);
  });

  /**
   * Another hand's data: the open dataset "piano-protege-curriculum" (huggingface.co, PIG format) fingers the A major
   * arpeggio of two octaves in the left hand 5321321 up and 231235 down.
   */
  it('agrees with an open dataset on A major, left hand, up and down', () => {
    const { steps } = buildExercise({ key: 'A major', form: 'arpeggio', hands: 'left', octaves: 2 });
    expect(steps.map(({ notes }) => notes[0]!.finger).join('')).toBe('5321321' + '231235');
  });
});

describe('other lengths follow the two-octave pattern', () => {
  it.each<readonly [string, Hand, number, string]>([
    ['C major', 'right', 1, '1235'],
    ['C major', 'right', 3, '1231231235'],
    ['C major', 'right', 4, '1231231231235'],
    ['C major', 'left', 1, '5421'],
    ['C major', 'left', 4, '5421421421421'],
    ['Bb major', 'right', 1, '2124'],
    ['Bb major', 'right', 3, '2124124124'],
    ['Db major', 'left', 3, '2142142142'],
  ])('fingers %s, %s hand, over %i octaves by repeating its second octave', (key, hand, octaves, up) => {
    expect(fingersUp(key, hand, octaves)).toBe(up);
  });
});
