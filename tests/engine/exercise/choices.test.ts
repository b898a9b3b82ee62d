import { describe, expect, it } from 'vitest';
import { UsageError } from '../../../src/engine/base/errors.ts';
import { allChoices, buildExercise, exerciseTitle } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';

const GOOD: ExerciseChoice = { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 };

describe('every choice', () => {
  // 24 keys, 3 hands: arpeggio, two seventh chords and chromatic 4 lengths, scale 4 (in minor times 3 scales), two inversions 2, scales
  // in another guise 2 (times 3 scales), fifteen of one; five of the guises are of both hands alone.
  it('is there once: 12 · (3 · (4 · 4 + 4 + 2 · 2 + 3 · 2 + 15) + 5 · 2) in major and 12 · (3 · (4 · 4 + 12 + 2 · 2 + 3 · 6 + 15) + 5 · 6) in minor', () => {
    const choices = allChoices();
    expect(choices).toHaveLength(12 * (3 * 45 + 10) + 12 * (3 * 65 + 30));
    expect(new Set(choices.map((choice) => JSON.stringify(choice))).size).toBe(choices.length);
  });

  it('has a title of its own, and can be built as it stands', () => {
    const exercises = allChoices().map(buildExercise);
    expect(new Set(exercises.map(({ title }) => title)).size).toBe(exercises.length);
    expect(exercises.map(({ choice }) => choice)).toEqual(allChoices());
  });
});

describe('a title', () => {
  it.each<readonly [ExerciseChoice, string]>([
    [{ ...GOOD, key: 'Ab major' }, 'A♭ major · tonic arpeggio, two octaves · right hand'],
    [{ ...GOOD, octaves: 1, hands: 'together' }, 'C major · tonic arpeggio, one octave · hands together'],
    [
      { ...GOOD, form: 'triads', octaves: 1, hands: 'left' },
      'C major · tonic triad and its inversions · left hand',
    ],
    [
      { ...GOOD, form: 'broken-triads', octaves: 1 },
      'C major · broken tonic triad and its inversions · right hand',
    ],
    [
      { ...GOOD, key: 'F# minor', form: 'progression', octaves: 1 },
      'F♯ minor · progression i–iv–i–V7–i · right hand',
    ],
    [{ ...GOOD, form: 'progression', octaves: 1 }, 'C major · progression I–IV–I–V7–I · right hand'],
    [{ ...GOOD, form: 'scale', octaves: 4 }, 'C major · scale, four octaves · right hand'],
    [{ ...GOOD, key: 'a minor', form: 'scale' }, 'A minor · harmonic minor scale, two octaves · right hand'],
    [
      { ...GOOD, key: 'a minor', form: 'scale', minorScale: 'melodic' },
      'A minor · melodic minor scale, two octaves · right hand',
    ],
  ])('of %o is "%s"', (choice, title) => {
    expect(exerciseTitle(choice)).toBe(title);
    expect(buildExercise(choice).title).toBe(title);
  });
});

describe('a choice', () => {
  it('is settled: the key in our spelling, the harmonic minor where no scale is said', () => {
    expect(buildExercise({ ...GOOD, key: 'e♭m', form: 'scale' }).choice).toEqual({
      key: 'Eb minor',
      form: 'scale',
      hands: 'right',
      octaves: 2,
      minorScale: 'harmonic',
    });
  });

  it.each<readonly [Record<string, unknown>, RegExp]>([
    [{ key: 'X' }, /key="X" is not a key/],
    [{ octaves: 0 }, /octaves=0.*1 to 4/],
    [{ octaves: 5 }, /octaves=5.*1 to 4/],
    [{ octaves: 1.5 }, /octaves=1\.5.*1 to 4/],
    [{ octaves: Number.NaN }, /octaves=NaN.*1 to 4/],
    [{ form: 'triads' }, /octaves=2.*triads always has 1.*Use 1/],
    [
      { form: 'waltz' },
      /form=waltz.*arpeggio, scale, triads, broken-triads, progression, dominant-seventh, diminished-seventh, chromatic, five-finger/,
    ],
    [{ hands: 'both' }, /hands=both.*left, right, together/],
    [{ minorScale: 'harmonic' }, /minorScale=harmonic.*arpeggio in C major.*Leave it out/],
    [{ form: 'scale', minorScale: 'melodic' }, /minorScale=melodic.*scale in C major/],
    [{ key: 'A minor', form: 'scale', minorScale: 'blue' }, /minorScale=blue.*natural, harmonic, melodic/],
  ])('that does not exist is refused with its name, its bound and the way out: %o', (change, message) => {
    const choice = { ...GOOD, ...change } as ExerciseChoice;
    expect(() => buildExercise(choice)).toThrow(UsageError);
    expect(() => buildExercise(choice)).toThrow(message);
    expect(() => exerciseTitle(choice)).toThrow(message);
  });
});
