import { describe, expect, it } from 'vitest';
import {
  ALL_KEYS,
  buildExercise,
  DEFAULT_CRITERIA,
  listedKey,
  nextKey,
  offers,
  places,
  USUAL_GOALS,
  type ExerciseChoice,
  type Offer,
  type Practised,
} from '../../../src/engine/index.ts';
import { inventedPassages } from '../../support/passages.ts';
import { attempts, READY, standings } from './history.ts';

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

  it('offers hands together once, at no tempo that nobody chose, when both are ready', () => {
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
        targetBpm: null,
        since: of('left'),
      },
    ]);
  });

  it.each([
    ['the lowest level that asks for it', [true, false], ['together']],
    ['that one, though a later one asks for both', [false, true], []],
    ['its only level', [false], []],
    ['nobody', [], ['together']],
  ])('offers hands together or not as is asked by %s', (_, asked, kinds) => {
    const [level] = USUAL_GOALS.syllabus.levels;
    const levels = [
      ...asked.map((together) => ({
        ...level!,
        keys: ['D major'],
        asks: [{ form: 'arpeggio', octaves: 2, leastBpm: null, together } as const],
      })),
      { ...level!, keys: ['B major'] },
    ];
    const goals = { ...USUAL_GOALS, syllabus: { ...USUAL_GOALS.syllabus, levels } };
    const history = [...attempts(of('right'), READY), ...attempts(of('left'), READY)];
    const found = offers(standings(history, DEFAULT_CRITERIA, goals), DEFAULT_CRITERIA, goals);
    expect(found.map(({ kind }) => kind).filter((kind) => kind === 'together')).toEqual(kinds);
  });

  it.each([
    ['one hand nothing more', 'right', []],
    ['both hands the other one', 'together', ['other-hand']],
  ] as const)('offers of a passage for %s', (_, written, kinds) => {
    const passage = inventedPassages(9).find(({ hands }) => hands === written)!;
    expect(offered(attempts({ ...passage, hands: 'right' }, READY)).map(({ kind }) => kind)).toEqual(kinds);
  });

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

  it('offers the next key of the levels and the next form when the key stands in all that was begun', () => {
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
    ]);
    const kinds = (history: readonly Practised[]) => offered(history).map(({ kind }) => kind);
    const scaleBegun = attempts(of('right', { form: 'scale' }), [{ wrong: 1 }]);
    expect(kinds([...both(), ...scaleBegun])).toEqual(['next-form']);
    const nextBegun = attempts(of('right', { key: 'A major' }), [{}]);
    expect(offered([...both(), ...nextBegun])).toMatchObject([{}, { exercise: { key: 'E major' } }]);
  });

  const set = (octaves: number, tempoBpm = 81) =>
    (
      [
        ['arpeggio', octaves],
        ['scale', octaves],
        ['triads', 1],
        ['broken-triads', 1],
        ['progression', 1],
      ] as const
    ).flatMap(([form, of]) =>
      (['right', 'left', 'together'] as const).flatMap((hands) =>
        attempts(
          { ...ARPEGGIO, form, hands, octaves: of },
          READY.map(() => ({ tempoBpm })),
        ),
      ),
    );
  const further = (history: readonly Practised[], kind: Offer['kind']) =>
    offered(history).filter((offer) => offer.kind === kind);

  it('offers more octaves where the whole set of the key is ready at all that is asked of it', () => {
    const longer = (octaves: number) =>
      further(set(octaves, 120), 'more-octaves').map(({ exercise }) => [exercise.form, exercise.octaves]);
    expect(longer(1)).toEqual([
      ['arpeggio', 2],
      ['scale', 2],
    ]);
    expect(longer(2)).toEqual([
      ['arpeggio', 4],
      ['scale', 4],
    ]);
    expect(longer(4)).toEqual([]);
  });

  it('offers what is ready at the tempo of its level faster, as a later level asks, and no other tempo', () => {
    expect(
      further(set(1, 60), 'faster').map(({ exercise, targetBpm }) => [exercise.form, targetBpm]),
    ).toEqual([
      ['triads', 66],
      ['broken-triads', 63],
      ['progression', 63],
    ]);
    expect(further(set(1, 120), 'faster')).toEqual([]);
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
