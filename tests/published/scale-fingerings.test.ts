import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../src/engine/exercise/index.ts';
import type { ExerciseChoice, Hand } from '../../src/engine/exercise/index.ts';

function fingers(choice: Omit<ExerciseChoice, 'form'>): string {
  const { steps } = buildExercise({ ...choice, form: 'scale' });
  return steps.map(({ notes }) => notes[0]!.finger).join('');
}

/**
 * github.com/mpg/pypiano-fingers, file ref-scales-harmonic: "the standard fingering for each scale", major and harmonic
 * minor, one octave as it repeats: right hand then left hand.
 */
const REFERENCE_LIST: readonly (readonly [key: string, right: string, left: string])[] = [
  ['C major', '12312345', '54321321'],
  ['A minor', '12312345', '54321321'],
  ['G major', '12312345', '54321321'],
  ['E minor', '12312345', '54321321'],
  ['D major', '12312345', '54321321'],
  ['B minor', '12312345', '13214321'],
  ['A major', '12312345', '54321321'],
  ['F# minor', '34123123', '43213214'],
  ['E major', '12312345', '54321321'],
  ['C# minor', '34123123', '32143213'],
  ['B major', '12312345', '13214321'],
  ['G# minor', '34123123', '32143213'],
  ['F# major', '23412312', '43213214'],
  ['Eb minor', '31234123', '21432132'],
  ['Db major', '23123412', '32143213'],
  ['Bb minor', '41231234', '21321432'],
  ['Ab major', '34123123', '32143213'],
  ['F minor', '12341231', '54321321'],
  ['Eb major', '31234123', '32143213'],
  ['C minor', '12312345', '54321321'],
  ['Bb major', '41231234', '32143213'],
  ['G minor', '12312345', '54321321'],
  ['F major', '12341231', '54321321'],
  ['D minor', '12312345', '54321321'],
];

describe('scale fingerings against the reference list', () => {
  it('covers all 24 keys', () => {
    expect(new Set(REFERENCE_LIST.map(([key]) => key)).size).toBe(24);
  });

  // The list gives an octave that repeats. Where a hand begins with another finger only its first note differs, so the
  // right hand is compared in its second octave and the left from the second note of its first.
  it.each(REFERENCE_LIST)('agrees in %s', (key, right, left) => {
    expect(fingers({ key, hands: 'right', octaves: 2 }).slice(7, 14)).toBe(right.slice(0, 7));
    expect(fingers({ key, hands: 'left', octaves: 2 }).slice(1, 8)).toBe(left.slice(1));
  });
});

describe('scale fingerings against published pages, written out up and down', () => {
  /** theconservatoryofmusic.org, major scales with flats, one octave up and down. */
  it.each<readonly [string, Hand, string]>([
    ['F major', 'right', '123412343214321'],
    ['F major', 'left', '543213212312345'],
    ['Bb major', 'left', '321432131234123'],
    ['Eb major', 'right', '312341232143213'],
    ['Eb major', 'left', '321432131234123'],
    ['Ab major', 'right', '341231232132143'],
    ['Ab major', 'left', '321432131234123'],
    ['Db major', 'right', '231234121432132'],
    ['Db major', 'left', '321432131234123'],
  ])('fingers %s, %s hand, one octave, as published', (key, hands, published) => {
    expect(fingers({ key, hands, octaves: 1 })).toBe(published);
  });

  it('B flat major, right hand: the page begins on 4, we on 2; every other finger is the same', () => {
    expect(fingers({ key: 'Bb major', hands: 'right', octaves: 1 }).slice(1, -1)).toBe('1231234321321');
  });

  /** swindonpianolessons.co.uk, G minor in all three forms, two octaves up and down. */
  it.each(['natural', 'harmonic', 'melodic'] as const)(
    'fingers G minor %s, two octaves, as published',
    (minorScale) => {
      const choice = { key: 'G minor', octaves: 2, minorScale } as const;
      expect(fingers({ ...choice, hands: 'right' })).toBe('123123412312345' + '43213214321321');
      expect(fingers({ ...choice, hands: 'left' })).toBe('543213214321321' + '23123412312345');
    },
  );

  /** thoughts.kyletycholiz.com, natural minor scales, two octaves up. */
  it.each<readonly [string, Hand, string]>([
    ['B minor', 'right', '123 1234 123 12345'],
    ['B minor', 'left', '4321 4321 321 4321'],
    ['C# minor', 'right', '34 123 1234 123 123'],
    ['C# minor', 'left', '321 4321 321 4321 3'],
    ['D minor', 'right', '123 1234 123 12345'],
    ['D minor', 'left', '54321 321 4321 321'],
    ['E minor', 'left', '54321 321 4321 321'],
    ['Eb minor', 'right', '3 1234 123 1234 123'],
    ['Eb minor', 'left', '21 4321 321 4321 32'],
    ['F minor', 'right', '1234 123 1234 1234'],
    ['G minor', 'left', '54321 321 4321 321'],
  ])('fingers %s natural, %s hand, two octaves up, as published', (key, hands, published) => {
    const up = fingers({ key, hands, octaves: 2, minorScale: 'natural' }).slice(0, 15);
    expect(up).toBe(published.replaceAll(' ', ''));
  });

  /**
   * A teacher's published pages on the melodic minor of F♯ and C♯: right hand 2 first, thumb on A and E♯ (E and B♯),
   * 3 on top, then 2 on E (B) and the thumb on D (A), 3 over onto C♯ (G♯).
   */
  it.each([
    ['F# minor', '23123413'],
    ['C# minor', '23123413'],
  ])('changes %s melodic, right hand, to the natural fingering at the top', (key, up) => {
    const played = fingers({ key, hands: 'right', octaves: 1, minorScale: 'melodic' });
    expect(played.slice(0, 8)).toBe(up);
    expect(played.slice(7, 11)).toBe('3213');
  });
});
