import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { ALL_KEYS, exerciseId, leastTempi, SYLLABUS, USUAL_GOALS } from '../../../src/engine/index.ts';
import type { ExerciseChoice, Goals, Syllabus } from '../../../src/engine/index.ts';
import { descriptionsIn } from '../../support/descriptions.ts';

const ascending = (values: readonly number[]): readonly number[] => [...values].sort((a, b) => a - b);

describe('the usual levels', () => {
  const { syllabus } = USUAL_GOALS;
  const asks = syllabus.levels.flatMap((level) => level.asks);

  it('are levels as anybody may write them', () => {
    expect(v.is(SYLLABUS, syllabus)).toBe(true);
  });

  it.each([...new Set(asks.map(({ form }) => form))])(
    'never ask less of the %s than a level before',
    (form) => {
      const asked = asks.filter((ask) => ask.form === form);
      for (const name of ['leastBpm', 'octaves'] as const) {
        const rising = asked.map((ask) => ask[name]!);
        expect(rising, name).toEqual(ascending(rising));
      }
    },
  );

  it('ask for loudness more even than a step of dynamics, some 5 dB', () => {
    expect(Math.max(...asks.map(({ loudnessDb = 0 }) => loudnessDb))).toBeLessThan(5);
  });
});

describe('a level as anybody may write it', () => {
  it('says what its fields are in words of its own', () => {
    const told = descriptionsIn(SYLLABUS);
    expect(told.length).toBeGreaterThan(5);
    expect(told.filter((text) => !/\w+\W+\w+/.test(text))).toEqual([]);
  });

  const [usual] = USUAL_GOALS.syllabus.levels;
  const [ask] = usual!.asks;
  const isLevel = (more: object): boolean =>
    v.is(SYLLABUS, { ...USUAL_GOALS.syllabus, levels: [{ ...usual!, ...more }] });

  it.each([
    ['leastBpm', [20, 300, null], [19, 301]],
    ['loudnessDb', [1, 12], [0.9, 12.1]],
    ['octaves', [1, 2], [0, 1.5, 99]],
  ])('asks for %s within its bounds', (name, within, beyond) => {
    const accepts = (value: unknown): boolean => isLevel({ asks: [{ ...ask, [name]: value }] });
    expect(within.filter((value) => !accepts(value))).toEqual([]);
    expect(beyond.filter(accepts)).toEqual([]);
  });

  it('has one key at least, and no more than there are', () => {
    expect(isLevel({ keys: ['C major'] })).toBe(true);
    expect(isLevel({ keys: [] })).toBe(false);
    expect(isLevel({ keys: [...ALL_KEYS] })).toBe(true);
    expect(isLevel({ keys: [...ALL_KEYS, 'C major'] })).toBe(false);
  });
});

describe('the tempi at which an exercise is ready', () => {
  const level = (
    name: string,
    keys: readonly string[],
    leastBpm: number | null,
  ): Syllabus['levels'][number] => ({
    name,
    keys,
    asks: [{ form: 'arpeggio', octaves: 2, leastBpm, together: true }],
  });
  const of = (key: string, more: Partial<ExerciseChoice> = {}): ExerciseChoice => ({
    key,
    form: 'arpeggio',
    hands: 'right',
    octaves: 2,
    ...more,
  });

  const goals = (...levels: Syllabus['levels']): Goals => ({
    syllabus: { ...USUAL_GOALS.syllabus, levels },
    ownBpm: { [exerciseId(of('F major'))]: 72 },
  });
  const two = goals(level('1', ['C major', 'F major'], 60), level('2', ['C major', 'D major'], 80));

  it.each<[string, Goals, ExerciseChoice, readonly number[]]>([
    ['those of its levels, one after the other', two, of('C major'), [60, 80]],
    ['the one that somebody set for it', two, of('F major'), [72]],
    ['that of the only level that asks for it', two, of('D major'), [80]],
    [
      'that of the first level with the form, where none asks for it',
      two,
      of('D major', { octaves: 3 }),
      [60],
    ],
    ['any, where no level has the form', two, of('C major', { form: 'scale' }), []],
    ['any, where the level asks for none', goals(level('1', ['C major'], null)), of('C major'), []],
    [
      'no slower one after a faster',
      goals(level('1', ['C major'], 80), level('2', ['C major'], 60)),
      of('C major'),
      [80],
    ],
  ])('are %s', (_name, given, exercise, tempi) => {
    expect(leastTempi(given, exercise)).toEqual(tempi);
  });
});
