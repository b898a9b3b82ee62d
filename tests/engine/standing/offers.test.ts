import { describe, expect, it } from 'vitest';
import {
  ALL_KEYS,
  buildExercise,
  DEFAULT_CRITERIA,
  listedKey,
  nextKey,
  offers,
  places,
  relativeKey,
  standings,
  type ExerciseChoice,
  type Practised,
} from '../../../src/engine/index.ts';
import { attempts, READY } from './history.ts';

const ARPEGGIO: ExerciseChoice = { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 };
const of = (hands: ExerciseChoice['hands'], more: Partial<ExerciseChoice> = {}): ExerciseChoice => ({
  ...ARPEGGIO,
  ...more,
  hands,
});
const offered = (history: readonly Practised[]) =>
  offers(standings(history, DEFAULT_CRITERIA), DEFAULT_CRITERIA);

describe('what may be begun', () => {
  it('offers the other hand when one is ready, and nothing before', () => {
    expect(offered(attempts(of('right'), [{}, {}]))).toEqual([]);
    expect(offered(attempts(of('right'), READY))).toEqual([
      {
        kind: 'other-hand',
        exercise: of('left'),
        targetBpm: 80,
        since: of('right'),
      },
    ]);
  });

  it('offers hands together once, at two thirds of the slower hand, when both are ready', () => {
    const history = [
      ...attempts(of('right'), READY),
      ...attempts(
        of('left'),
        [{}, {}, { targetBpm: 72, tempoBpm: 72 }].map((one) => ({ targetBpm: 72, ...one })),
      ),
    ];
    expect(offered(history)).toEqual([
      {
        kind: 'together',
        exercise: of('together'),
        targetBpm: 48,
        since: of('left'),
      },
    ]);
  });

  it.each([
    ['the left hand', 'left'],
    ['the right hand', 'right'],
  ] as const)(
    'offers them at two thirds of the one tempo that is known, where %s has none',
    (_name, without) => {
      const history = (['left', 'right'] as const).flatMap((hands) =>
        attempts(
          of(hands),
          READY.map(() => (hands === without ? { targetBpm: null } : { targetBpm: 72, tempoBpm: 72 })),
        ),
      );
      expect(offered(history)).toMatchObject([{ kind: 'together', targetBpm: 48 }]);
    },
  );

  it('does not offer what was begun', () => {
    const history = [
      ...attempts(of('right'), READY),
      ...attempts(of('left'), READY),
      ...attempts(of('together'), [{ wrong: 3 }]),
    ];
    expect(offered(history)).toEqual([]);
  });

  const both = (more: Partial<ExerciseChoice> = {}) =>
    (['right', 'left', 'together'] as const).flatMap((hands) => attempts(of(hands, more), READY));

  it('offers the next key, its relative and the next form when the key stands in all that was begun', () => {
    expect(offered(both())).toEqual([
      {
        kind: 'next-form',
        exercise: { ...ARPEGGIO, form: 'scale' },
        targetBpm: null,
        since: of('together'),
      },
      {
        kind: 'next-key',
        exercise: { ...ARPEGGIO, key: 'A major' },
        targetBpm: 80,
        since: of('together'),
      },
      {
        kind: 'relative-key',
        exercise: { ...ARPEGGIO, key: 'B minor' },
        targetBpm: 80,
        since: of('together'),
      },
    ]);
    const kinds = (history: readonly Practised[]) => offered(history).map(({ kind }) => kind);
    const scaleBegun = attempts(of('right', { form: 'scale' }), [{ wrong: 1 }]);
    expect(kinds([...both(), ...scaleBegun])).toEqual(['next-form']);
    const nextBegun = attempts(of('right', { key: 'A major' }), [{}]);
    expect(kinds([...both(), ...nextBegun])).toEqual(['next-form', 'relative-key']);
  });

  it('offers an octave more where the whole set of the key stands, up to four', () => {
    const set = (octaves: number) => [
      ...both({ octaves }),
      ...both({ form: 'scale', octaves }),
      ...both({ form: 'triads', octaves: 1 }),
      ...both({ form: 'broken-triads', octaves: 1 }),
      ...both({ form: 'progression', octaves: 1 }),
    ];
    const longer = (octaves: number) =>
      offered(set(octaves)).flatMap(({ kind, exercise }) => (kind === 'more-octaves' ? [exercise] : []));
    expect(longer(2)).toEqual([of('right', { octaves: 3 }), of('right', { form: 'scale', octaves: 3 })]);
    expect(longer(4)).toEqual([]);
  });

  // Signatures, as any theory book has them: common practice, no source.
  it.each([
    ['C major', 'A minor'],
    ['F# major', 'Eb minor'],
    ['Bb major', 'G minor'],
    ['D minor', 'F major'],
  ])('knows the relative of %s: %s', (key, relative) => {
    expect(relativeKey(key)).toBe(relative);
  });

  it.each(ALL_KEYS)('goes from %s round the whole circle and comes back', (key) => {
    let at = key;
    const seen = Array.from({ length: 12 }, () => (at = nextKey(at)));
    expect(new Set(seen).size).toBe(12);
    expect(at).toBe(key);
  });

  it('knows keys by their other names', () => {
    expect(listedKey('Gb major')).toBe('F# major');
    expect(nextKey('C# major')).toBe('Ab major');
  });
});

describe('all places', () => {
  it('are 24 keys × five forms, in order, each with its hands', () => {
    const all = places([], DEFAULT_CRITERIA);
    expect(all).toHaveLength(120);
    for (const { key, form, byHands } of all)
      for (const [hands, standing] of Object.entries(byHands)) {
        expect(standing).toMatchObject({ level: 'new', exercise: { key, form, hands } });
        expect(buildExercise(standing.exercise).steps.length).toBeGreaterThan(4);
      }
  });

  it('show the octaves played last, and the same ones for the hand that has not played', () => {
    const history = [
      ...attempts(of('right', { octaves: 2 }), READY, 5),
      ...attempts(of('right', { octaves: 4 }), [{ wrong: 1 }], 1),
    ];
    const place = places(standings(history, DEFAULT_CRITERIA).values(), DEFAULT_CRITERIA).find(
      (one) => one.key === 'D major' && one.form === 'arpeggio',
    )!;
    expect(place.byHands.right).toMatchObject({ level: 'nearly', exercise: { octaves: 4 } });
    expect(place.byHands.left).toMatchObject({ level: 'new', exercise: { octaves: 4 } });
  });
});
