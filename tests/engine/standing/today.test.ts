import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ALL_KEYS,
  allChoices,
  buildExercise,
  criteriaOf,
  DEFAULT_CRITERIA,
  exerciseId,
  listedKey,
  nextKey,
  offers,
  places,
  readyBounds,
  relativeKey,
  standings,
  today,
  type ExerciseChoice,
  type Practised,
} from '../../../src/engine/index.ts';
import { attempts, DAY_MS, NOW_MS, READY, summary } from './history.ts';

const ARPEGGIO: ExerciseChoice = { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 };
const of = (hands: ExerciseChoice['hands'], more: Partial<ExerciseChoice> = {}): ExerciseChoice => ({
  ...ARPEGGIO,
  ...more,
  hands,
});
const offered = (history: readonly Practised[]) =>
  offers(standings(history, DEFAULT_CRITERIA), DEFAULT_CRITERIA);
const planned = (minutes: number, history: readonly Practised[]) =>
  today(minutes, history, NOW_MS, DEFAULT_CRITERIA);

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

describe('the plan for today', () => {
  it('begins with each hand alone where nothing was played', () => {
    expect(planned(20, []).map(({ exercise, minutes }) => [exercise.hands, minutes])).toEqual([
      ['right', 10],
      ['left', 10],
    ]);
  });

  it('fills an hour with more than two things, and rests between them, also where little was played yet', () => {
    for (const history of [[], attempts(of('right'), [{ wrong: 2 }], 1)]) {
      const plan = planned(60, history);
      expect(plan.length).toBeGreaterThanOrEqual(5);
      expect(plan.reduce((sum, item) => sum + item.minutes + item.restMinutes, 0)).toBe(60);
      expect(plan.filter(({ restMinutes }) => restMinutes === 5)).toHaveLength(1);
      expect(plan.at(-1)!.restMinutes).toBe(0);
    }
    expect(planned(30, []).every(({ restMinutes }) => restMinutes === 0)).toBe(true);
  });

  it('takes no tempo that nobody chose for a form that nobody has begun', () => {
    const beside = planned(60, attempts(of('right'), [{ wrong: 2 }], 1)).filter(
      ({ reason }) => reason.kind === 'beside',
    );
    expect(beside.length).toBeGreaterThan(2);
    expect(beside.every(({ targetBpm }) => targetBpm === null)).toBe(true);
  });

  it('has something weak, something not played for long and something new', () => {
    const history = [
      ...attempts(of('right', { form: 'scale' }), [{ wrong: 2 }], 1),
      ...attempts(of('right', { key: 'C major' }), READY, 30),
      ...attempts(of('right', { key: 'G major' }), READY, 2),
    ];
    const plan = planned(14, history);
    expect(plan.map(({ exercise: { key, hands }, reason }) => [reason.kind, key, hands])).toEqual([
      ['weak', 'D major', 'right'],
      ['long-ago', 'C major', 'right'],
      ['offer', 'C major', 'left'],
    ]);
    expect(plan.map(({ minutes }) => minutes)).toEqual([6, 3, 5]);
  });

  it('puts a hand alone before the hands together that wait for it', () => {
    const history = [
      ...attempts(of('together'), [{ handsApartMs: 90 }], 1),
      ...attempts(of('right'), READY, 1),
    ];
    const plan = planned(10, history);
    expect(plan[0]).toMatchObject({ exercise: of('left'), reason: { kind: 'hand-first' } });
    expect(plan.every(({ exercise }) => exercise.hands !== 'together')).toBe(true);
  });

  it('keeps up what is ready where nothing else is due', () => {
    const history = [
      ...attempts(of('right'), READY, 1),
      ...attempts(of('left'), READY, 1),
      ...attempts(of('together'), [{ wrong: 1 }, {}, {}], 1),
    ];
    const plan = planned(30, history);
    expect(plan.map(({ exercise, reason }) => [exercise.hands, reason.kind])).toEqual([
      ['left', 'upkeep'],
      ['right', 'upkeep'],
      ['together', 'weak'],
    ]);
  });
});

const CHOICES = allChoices().filter(({ key }) => ['C major', 'G major', 'A minor', 'E minor'].includes(key));
const anyHistory = fc.array(
  fc.record({
    whenMs: fc.integer({ min: NOW_MS - 90 * DAY_MS, max: NOW_MS }),
    summary: fc
      .tuple(
        fc.constantFrom(...CHOICES),
        fc.record({
          wrong: fc.constantFrom(0, 0, 0, 1, 3),
          evennessPercent: fc.option(fc.double({ min: 1, max: 20, noNaN: true })),
          targetBpm: fc.option(fc.constantFrom(60, 80)),
        }),
      )
      .map(([exercise, more]) => summary(exercise, more)),
  }),
  { maxLength: 80 },
);
const anyMinutes = fc.integer({ min: -5, max: 120 });

describe('any plan', () => {
  it('never takes longer than there is time, has whole minutes, and each exercise once', () => {
    fc.assert(
      fc.property(anyHistory, anyMinutes, (history, minutes) => {
        const plan = planned(minutes, history);
        const sum = plan.reduce((total, item) => total + item.minutes + item.restMinutes, 0);
        expect(sum).toBeLessThanOrEqual(Math.max(0, minutes));
        expect(plan.every((item) => Number.isInteger(item.minutes) && item.minutes > 0)).toBe(true);
        const ids = plan.map(({ exercise }) => exerciseId(exercise));
        expect(new Set(ids).size).toBe(ids.length);
        expect(plan.length > 0).toBe(minutes > 0);
      }),
    );
  });

  it('puts hands separate first', () => {
    fc.assert(
      fc.property(anyHistory, anyMinutes, (history, minutes) => {
        const together = planned(minutes, history).map(({ exercise }) => exercise.hands === 'together');
        expect(together).toEqual([...together].sort((a, b) => Number(a) - Number(b)));
      }),
    );
  });

  it('has hands together only where it is ready or each hand is', () => {
    fc.assert(
      fc.property(anyHistory, (history) => {
        const all = standings(history, DEFAULT_CRITERIA);
        const ready = (choice: ExerciseChoice) => all.get(exerciseId(choice))?.level === 'ready';
        for (const { exercise } of planned(60, history)) {
          if (exercise.hands !== 'together') continue;
          const hands = (['left', 'right'] as const).every((one) => ready({ ...exercise, hands: one }));
          expect(ready(exercise) || hands).toBe(true);
        }
      }),
    );
  });

  it('is the same for the same history, in whatever order it lies', () => {
    fc.assert(
      fc.property(anyHistory, anyMinutes, (history, minutes) => {
        const times = new Set(history.map(({ whenMs }) => whenMs));
        fc.pre(times.size === history.length);
        const plan = planned(minutes, history);
        expect(planned(minutes, [...history].reverse())).toEqual(plan);
      }),
    );
  });

  it('lets a looser criterion make nothing less ready', () => {
    const loose = { ...DEFAULT_CRITERIA, evennessPercent: 12, readyInARow: 2 };
    const rank = { new: 0, 'not-yet': 1, nearly: 2, ready: 3 };
    fc.assert(
      fc.property(anyHistory, (history) => {
        const [strict, kind] = [standings(history, DEFAULT_CRITERIA), standings(history, loose)];
        for (const [id, { level }] of strict)
          expect(rank[kind.get(id)!.level]).toBeGreaterThanOrEqual(rank[level]);
      }),
    );
  });
});

describe('the bounds of "ready?"', () => {
  it('are those of the defaults where nobody set any', () => {
    expect(criteriaOf({})).toEqual(DEFAULT_CRITERIA);
    expect(readyBounds(DEFAULT_CRITERIA)).toEqual({
      evennessPercent: 8,
      crossingPercent: 10,
      chordSpreadMs: 40,
      handsApartMs: 40,
      tempoPercent: 3,
      readyInARow: 3,
    });
  });

  it('come back as they were set, held within their limits', () => {
    const set = {
      evennessPercent: 6,
      crossingPercent: 20,
      chordSpreadMs: 30,
      handsApartMs: 50,
      tempoPercent: 5,
      readyInARow: 4,
    };
    expect(readyBounds(criteriaOf(set))).toEqual(set);
    expect(
      readyBounds(criteriaOf({ evennessPercent: -3, readyInARow: 99, tempoPercent: Number.NaN })),
    ).toMatchObject({
      evennessPercent: 2,
      readyInARow: 10,
      tempoPercent: 3,
    });
  });
});
