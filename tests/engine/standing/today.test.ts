import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  allChoices,
  DEFAULT_CRITERIA,
  exerciseId,
  type ExerciseChoice,
  type Practised,
} from '../../../src/engine/index.ts';
import { attempts, DAY_MS, NOW_MS, READY, summary, standings, today } from './history.ts';

const ARPEGGIO: ExerciseChoice = { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 };
const of = (hands: ExerciseChoice['hands'], more: Partial<ExerciseChoice> = {}): ExerciseChoice => ({
  ...ARPEGGIO,
  ...more,
  hands,
});
const planned = (minutes: number, history: readonly Practised[]) =>
  today(minutes, history, NOW_MS, DEFAULT_CRITERIA);

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

  it.each([31, 32, 35, 40, 60, 61])('ends with no rest: %i minutes', (minutes) => {
    for (const history of [[], attempts(of('right'), [{ wrong: 2 }], 1)])
      expect(planned(minutes, history).at(-1)!.restMinutes).toBe(0);
  });

  it('takes no tempo that nobody chose for a form that nobody has begun', () => {
    const beside = planned(60, attempts(of('right'), [{ wrong: 2 }], 1)).filter(
      ({ reason }) => reason.kind === 'beside',
    );
    expect(beside.length).toBeGreaterThan(2);
    expect(beside.every(({ targetBpm }) => targetBpm === null)).toBe(true);
  });

  it('fills what time is left with other forms of the key played last', () => {
    const history = [
      ...attempts(of('right', { key: 'G major' }), [{ wrong: 2 }], 5),
      ...attempts(of('right'), [{ wrong: 2 }], 1),
    ];
    const beside = planned(60, history).filter(({ reason }) => reason.kind === 'beside');
    expect(new Set(beside.map(({ exercise: { key } }) => key))).toEqual(new Set(['D major']));
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
