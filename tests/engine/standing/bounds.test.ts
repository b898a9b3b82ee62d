import { describe, expect, it } from 'vitest';
import {
  criteriaOf,
  DEFAULT_CRITERIA,
  exerciseId,
  furtherPlaces,
  places,
  readyBounds,
  shortfalls,
  type ExerciseChoice,
  type FormStandings,
  type PlanItem,
  type Practised,
} from '../../../src/engine/index.ts';
import { READY_LIMITS } from '../../../src/engine/standing/criteria.ts';
import { attempts, DAY_MS, NOW_MS, READY, summary, standings, today } from './history.ts';

/** Each bound from both sides: what the rules of ready, due and begun say (src/engine/standing/README.md), by hand. */

const ARPEGGIO: ExerciseChoice = { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 };
const HOUR_MS = DAY_MS / 24;

/** Reasons for the arpeggio in the plan, after it was last played so long ago. */
function reasons(made: Parameters<typeof attempts>[1], daysAgo: number): readonly PlanItem['reason'][] {
  return today(40, attempts(ARPEGGIO, made, daysAgo), NOW_MS, DEFAULT_CRITERIA)
    .filter(({ exercise: { form, hands } }) => form === ARPEGGIO.form && hands === 'right')
    .map(({ reason }) => reason);
}

describe('what is due', () => {
  it('is begun with what the first level asks, a hand at a time, and no tempo that nobody chose', () => {
    expect(today(10, [], NOW_MS, DEFAULT_CRITERIA)).toMatchObject([
      {
        exercise: { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 1 },
        targetBpm: null,
        reason: { kind: 'first' },
      },
      { exercise: { key: 'C major', form: 'arpeggio', hands: 'left', octaves: 1 }, targetBpm: null },
    ]);
  });

  it('comes back after seven days when it is ready, not an hour sooner', () => {
    expect(reasons(READY, 7)).toEqual([{ kind: 'long-ago', days: 7 }]);
    expect(reasons(READY, 7 - HOUR_MS / DAY_MS)).toEqual([{ kind: 'upkeep' }]);
    expect(reasons(READY, 8.9)).toEqual([{ kind: 'long-ago', days: 8 }]);
  });

  it('comes back after twice as long each time that it went well again, after eight weeks at most', () => {
    const returned = (times: number) =>
      Array.from({ length: times }, (_, time) => attempts(ARPEGGIO, READY, 300 - 10 * time)).flat();
    const due = (times: number, daysAgo: number): boolean =>
      today(60, returned(times), NOW_MS - (300 - 10 * (times - 1) - daysAgo) * DAY_MS, DEFAULT_CRITERIA).some(
        ({ exercise, reason }) => exerciseId(exercise) === exerciseId(ARPEGGIO) && reason.kind === 'long-ago',
      );
    for (const [times, days] of [
      [1, 7],
      [2, 14],
      [3, 28],
      [4, 56],
      [5, 56],
    ] as const) {
      expect(due(times, days - 0.1), `${times}`).toBe(false);
      expect(due(times, days), `${times}`).toBe(true);
    }
  });

  it('is no longer in work after twenty-one days when it is not ready', () => {
    const weak = [{ evennessPercent: 20 }];
    expect(reasons(weak, 21 - HOUR_MS / DAY_MS)).toMatchObject([{ kind: 'weak' }]);
    expect(reasons(weak, 21)).toEqual([{ kind: 'long-ago', days: 21 }]);
  });

  it('is what is further from ready first, then what was played longest ago, then by name', () => {
    const weak = { evennessPercent: 20 };
    const key = (name: string): ExerciseChoice => ({ ...ARPEGGIO, key: name });
    const nearly = attempts(key('A major'), [{}, {}], 9);
    const history = [
      ...nearly,
      ...attempts(key('G major'), [weak], 3),
      ...attempts(key('E major'), [weak], 5),
      ...attempts(key('B major'), [weak], 5),
    ];
    for (const played of [history, [...history].reverse()]) {
      const plan = today(60, played, NOW_MS, DEFAULT_CRITERIA).filter(({ reason }) => reason.kind === 'weak');
      expect(plan.map(({ exercise }) => exercise.key)).toEqual(['B major', 'E major', 'G major', 'A major']);
    }
  });
});

describe('what was never played', () => {
  it.each([
    ['arpeggio', 2],
    ['scale', 2],
    ['triads', 1],
    ['broken-triads', 1],
    ['progression', 1],
  ] as const)('is shown as is usual: %s over %i octaves', (form, octaves) => {
    const all = places([], DEFAULT_CRITERIA).filter((place) => place.form === form);
    expect(new Set(all.map(({ byHands }) => byHands.left.exercise.octaves))).toEqual(new Set([octaves]));
  });

  it('is shown as the other hand was played last', () => {
    const history = [
      ...attempts({ ...ARPEGGIO, octaves: 3 }, [{}], 4),
      ...attempts({ ...ARPEGGIO, octaves: 1 }, [{}], 2),
    ];
    const found = places(standings(history, DEFAULT_CRITERIA).values(), DEFAULT_CRITERIA).find(
      ({ key, form }) => key === 'D major' && form === 'arpeggio',
    )!;
    expect([found.byHands.right.exercise.octaves, found.byHands.left.exercise.octaves]).toEqual([1, 1]);
    expect(found.byHands.together.exercise.hands).toBe('together');
  });

  it('is shown over most octaves where several were played at the same moment', () => {
    const orders = [
      [1, 3],
      [3, 1],
    ];
    for (const order of orders) {
      const history = order.flatMap((octaves) => attempts({ ...ARPEGGIO, octaves }, [{}]));
      const found = places(standings(history, DEFAULT_CRITERIA).values(), DEFAULT_CRITERIA).find(
        ({ key, form }) => key === 'D major' && form === 'arpeggio',
      )!;
      expect(found.byHands.right.exercise.octaves).toBe(3);
    }
  });
});

describe('what is played beside the set', () => {
  const CHROMATIC: ExerciseChoice = { ...ARPEGGIO, key: 'C# minor', form: 'chromatic', octaves: 1 };
  const begun = (history: readonly Practised[]): readonly FormStandings[] =>
    furtherPlaces(standings(history, DEFAULT_CRITERIA).values(), DEFAULT_CRITERIA);

  it.each([
    ['nothing was played', [], []],
    ['only forms of the set', attempts(ARPEGGIO, [{}]), []],
    ['one further form', attempts(CHROMATIC, [{}]), ['C# minor chromatic']],
    [
      'several, by forms and keys in their order',
      [
        ...attempts({ ...CHROMATIC, form: 'contrary-motion' }, [{}]),
        ...attempts(CHROMATIC, [{}]),
        ...attempts({ ...CHROMATIC, key: 'G major' }, [{}]),
      ],
      ['G major chromatic', 'C# minor chromatic', 'C# minor contrary-motion'],
    ],
  ])('has its place where it was begun: %s', (_, history, places) => {
    expect(begun(history).map(({ key, form }) => `${key} ${form}`)).toEqual(places);
  });

  it('shows the hand that was played, and the others in its octaves', () => {
    const [{ byHands }] = begun(attempts(CHROMATIC, [{}])) as [FormStandings];
    expect(byHands.right.attempts).toBe(1);
    expect([byHands.left.attempts, byHands.left.exercise.octaves]).toEqual([0, 1]);
  });
});

describe('which attempts are at the same exercise', () => {
  const minor: ExerciseChoice = { key: 'A minor', form: 'scale', hands: 'right', octaves: 2 };

  it('does not depend on whether the usual minor scale is named', () => {
    expect(exerciseId({ ...minor, minorScale: 'harmonic' })).toBe(exerciseId(minor));
  });

  it('depends on the minor scale in scales, and nowhere else', () => {
    expect(exerciseId({ ...minor, minorScale: 'melodic' })).not.toBe(exerciseId(minor));
    const arpeggio = { ...minor, form: 'arpeggio' } as const;
    expect(exerciseId({ ...arpeggio, minorScale: 'melodic' })).toBe(exerciseId(arpeggio));
    const major = { ...minor, key: 'A major' };
    expect(exerciseId({ ...major, minorScale: 'melodic' })).toBe(exerciseId(major));
  });

  it.each([
    ['the key', { key: 'E minor' }],
    ['the form', { form: 'arpeggio' }],
    ['the octaves', { octaves: 3 }],
    ['the hands', { hands: 'left' }],
  ] as const)('depends on %s', (_name, other) => {
    expect(exerciseId({ ...minor, ...other })).not.toBe(exerciseId(minor));
  });
});

describe('the bounds of ready', () => {
  it.each(Object.entries(READY_LIMITS))('hold %s within %j', (name, { least, most }) => {
    const held = (value: number) => readyBounds(criteriaOf({ [name]: value }));
    expect(held(least - 1)).toMatchObject({ [name]: least });
    expect(held(most + 1)).toMatchObject({ [name]: most });
    expect(held(least)).toMatchObject({ [name]: least });
    expect(held(most)).toMatchObject({ [name]: most });
    expect(held(NaN)).toEqual(readyBounds(DEFAULT_CRITERIA));
  });

  it('are those that may be set: none makes everything or nothing ready', () => {
    expect(READY_LIMITS).toEqual({
      evennessPercent: { least: 2, most: 30 },
      crossingPercent: { least: 5, most: 100 },
      chordSpreadMs: { least: 10, most: 150 },
      handsApartMs: { least: 10, most: 150 },
      tempoPercent: { least: 0, most: 30 },
      readyInARow: { least: 1, most: 10 },
      readyDays: { least: 1, most: 7 },
    });
  });

  it('make a crossing late by a share of its interval, and by as many just-noticeable differences of 2.5 %', () => {
    const criteria = criteriaOf({ crossingPercent: 40 });
    expect(criteria.crossingShareOfInterval).toBeCloseTo(0.4, 12);
    expect(criteria.clearlyAudibleJnds).toBeCloseTo(16, 12);
    expect(criteriaOf({})).toEqual(DEFAULT_CRITERIA);
  });
});

describe('what keeps an attempt from the criterion', () => {
  const kinds = (more: Parameters<typeof summary>[1], targetBpm: number | null = null) =>
    shortfalls(summary(ARPEGGIO, more), DEFAULT_CRITERIA, targetBpm).map(({ kind, narrow }) => [
      kind,
      narrow,
    ]);

  it('is nothing at the bound itself, and narrow up to half of it over it', () => {
    const [found] = shortfalls(summary(ARPEGGIO, { evennessPercent: 99 }), DEFAULT_CRITERIA, null);
    const { bound } = found as { readonly bound: number };
    expect(kinds({ evennessPercent: bound })).toEqual([]);
    expect(kinds({ evennessPercent: bound * 1.499 })).toEqual([['evenness', true]]);
    expect(kinds({ evennessPercent: bound * 1.501 })).toEqual([['evenness', false]]);
    expect(kinds({ evennessPercent: null })).not.toContainEqual(['evenness', true]);
  });

  it.each([
    ['chords', 'chordSpreadMs'],
    ['hands', 'handsApartMs'],
  ] as const)('is %s only beyond their bound', (kind, name) => {
    const ms = DEFAULT_CRITERIA[name];
    expect(kinds({ [name]: ms })).toEqual([]);
    expect(kinds({ [name]: ms * 1.499 })).toEqual([[kind, true]]);
    expect(kinds({ [name]: ms * 1.501 })).toEqual([[kind, false]]);
    expect(kinds({ [name]: null })).toEqual([]);
  });

  it('is what is in doubt only beyond its share of the notes heard, narrow up to twice that', () => {
    const most = 1000 * DEFAULT_CRITERIA.unsureShare;
    const doubted = (unsure: number) => kinds({ expected: 1000 + unsure, unsure });
    expect(doubted(most)).toEqual([]);
    expect(doubted(most + 1)).toEqual([['unsure', true]]);
    expect(doubted(2 * most)).toEqual([['unsure', true]]);
    expect(doubted(2 * most + 1)).toEqual([['unsure', false]]);
  });

  it('is the tempo only under what is allowed, narrow up to a tenth under it, or where it is not known and one is asked for', () => {
    const least = 100 * (1 - DEFAULT_CRITERIA.tempoShare);
    expect(kinds({ tempoBpm: least }, 100)).toEqual([]);
    expect(kinds({ tempoBpm: least - 0.01 }, 100)).toMatchObject([['tempo', true]]);
    expect(kinds({ tempoBpm: 90 }, 100)).toEqual([['tempo', true]]);
    expect(kinds({ tempoBpm: 89.99 }, 100)).toEqual([['tempo', false]]);
    expect(kinds({ tempoBpm: null }, 100)).toEqual([['tempo-unknown', false]]);
    expect(kinds({ tempoBpm: null }, null)).toEqual([]);
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
      readyDays: 2,
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
      readyDays: 3,
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
