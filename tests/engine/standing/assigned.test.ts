import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  allChoices,
  assignmentsOf,
  byExercise,
  byPractice,
  DEFAULT_CRITERIA,
  exerciseId,
  offers,
  standingsOf,
  type AssignedExercise,
  type AttemptSummary,
  type ExerciseChoice,
  type Intention,
  type Practised,
} from '../../../src/engine/index.ts';
import { attempts, DAY_MS, NOW_MS, READY, summary, today } from './history.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const WEEK_AGO = NOW_MS - 7 * DAY_MS;
const asked = (exercise: ExerciseChoice = SCALE, more: Partial<AssignedExercise> = {}): AssignedExercise => ({
  exercise,
  targetBpm: 80,
  inARow: null,
  evennessPercent: null,
  note: '',
  sinceMs: WEEK_AGO,
  ...more,
});
const howFar = (
  made: readonly Partial<AttemptSummary>[],
  more: Partial<AssignedExercise> = {},
  daysAgo = 0,
) => assignmentsOf([asked(SCALE, more)], byExercise(attempts(SCALE, made, daysAgo)), DEFAULT_CRITERIA)[0]!;

describe('an assigned exercise', () => {
  it('is new until it is played, and at the tempo asked for', () => {
    expect(howFar([])).toMatchObject({ metMs: null, standing: { level: 'new', targetBpm: 80, attempts: 0 } });
  });

  it('is met by as many in a row as usual where no number is asked for, and stays met', () => {
    expect(howFar([{}, {}]).metMs).toBeNull();
    expect(howFar([{}, {}, {}]).metMs).toBe(NOW_MS);
    const later = howFar([{}, {}, {}, { wrong: 3 }]);
    expect(later).toMatchObject({ metMs: NOW_MS - DAY_MS, standing: { level: 'not-yet' } });
  });

  it.each([
    ['one in a row', { inARow: 1 }, [{}], true],
    ['five in a row, and there are four', { inARow: 5 }, [{}, {}, {}, {}], false],
    ['five in a row, and there are five', { inARow: 5 }, [{}, {}, {}, {}, {}], true],
    ['more evenness than was reached', { evennessPercent: 3 }, READY, false],
    ['less evenness than usual', { evennessPercent: 12 }, READY.map(() => ({ evennessPercent: 11 })), true],
    ['a faster tempo than was reached', { targetBpm: 96 }, READY, false],
    ['a slower tempo than she aimed at', { targetBpm: 60 }, READY.map(() => ({ tempoBpm: 61 })), true],
    ['no tempo', { targetBpm: null }, READY.map(() => ({ tempoBpm: 40 })), true],
    ['no tempo, and none could be told', { targetBpm: null }, READY.map(() => ({ tempoBpm: null })), true],
  ] as const)('is judged by what is asked: %s', (_name, more, made, met) => {
    expect(howFar(made, more).metMs !== null).toBe(met);
  });

  it('counts only what was played since it was asked for', () => {
    expect(howFar(READY, {}, 8)).toMatchObject({ metMs: null, standing: { attempts: 0, level: 'new' } });
    expect(howFar([{}, {}, {}, {}], { sinceMs: NOW_MS - 1.5 * DAY_MS })).toMatchObject({
      metMs: null,
      standing: { attempts: 2, inARow: 2 },
    });
    // What is played at that very moment counts.
    expect(howFar([{}], { sinceMs: NOW_MS })).toMatchObject({ standing: { attempts: 1 } });
  });

  it('that is assigned twice counts once, as it was given first', () => {
    const twice = [asked(SCALE, { inARow: 5 }), asked(SCALE, { inARow: 1, sinceMs: 0 })];
    const found = assignmentsOf(twice, new Map(), DEFAULT_CRITERIA);
    expect(found.map((one) => one.standing.wanted)).toEqual([5]);
  });
});

describe('an exercise that is assigned with how it is to be practised', () => {
  const LONG_SHORT: Intention = { times: 3, rhythm: 'long-short' };
  const practised = (done: boolean, intention: Intention = LONG_SHORT): Partial<AttemptSummary> => ({
    situation: 'practised',
    practised: { intention, done },
  });
  const far = (made: readonly Partial<AttemptSummary>[], more: Partial<AssignedExercise> = {}) => {
    const history = attempts(SCALE, made);
    const assigned = [asked(SCALE, { intention: LONG_SHORT, ...more })];
    return assignmentsOf(assigned, byExercise(history), DEFAULT_CRITERIA, byPractice(history))[0]!;
  };

  it('is met by an attempt at just that whose report says that it is done', () => {
    expect(far([])).toMatchObject({ metMs: null, standing: { level: 'new' } });
    expect(far([practised(false)])).toMatchObject({ metMs: null, standing: { level: 'not-yet' } });
    expect(far([practised(true)])).toMatchObject({ metMs: NOW_MS, standing: { level: 'ready' } });
    expect(far([practised(true)], { inARow: 2 })).toMatchObject({
      metMs: null,
      standing: { level: 'nearly' },
    });
  });

  it('is met by no attempt at the whole, or at something else of it', () => {
    expect(far([{}, {}, {}]).metMs).toBeNull();
    expect(far([practised(true, { ...LONG_SHORT, rhythm: 'short-long' })]).metMs).toBeNull();
    const part: Intention = { ...LONG_SHORT, stretch: { fromStep: 0, toStep: 4 } };
    expect(far([practised(true, part)]).metMs).toBeNull();
  });

  it('comes first in the plan, with how it is to be practised, and leaves the whole to be judged as ever', () => {
    const both = [asked(SCALE, { intention: LONG_SHORT }), asked()];
    expect(planned(20, [], both).map(({ intention, reason }) => [reason.kind, intention])).toEqual([
      ['assigned', LONG_SHORT],
      ['assigned', undefined],
    ]);
    const after = planned(20, attempts(SCALE, [practised(true)]), both);
    expect(
      after.filter(({ reason }) => reason.kind === 'assigned').map(({ intention }) => intention),
    ).toEqual([undefined]);
  });
});

describe('where an assigned exercise stands', () => {
  const stands = (history: readonly Practised[], more: Partial<AssignedExercise>) => {
    const groups = byExercise(history);
    return standingsOf(
      groups,
      DEFAULT_CRITERIA,
      assignmentsOf([asked(SCALE, more)], groups, DEFAULT_CRITERIA),
    );
  };

  it('is judged by what the teacher asks, and so is what may be begun', () => {
    const one = stands(attempts(SCALE, [{}]), { inARow: 1 });
    expect(one.get(exerciseId(SCALE))).toMatchObject({ level: 'ready', wanted: 1 });
    expect(offers(one, DEFAULT_CRITERIA).map(({ kind }) => kind)).toEqual(['other-hand']);
    const strict = stands(attempts(SCALE, READY), { evennessPercent: 3 });
    expect(strict.get(exerciseId(SCALE))).toMatchObject({ level: 'nearly' });
    expect(offers(strict, DEFAULT_CRITERIA)).toEqual([]);
  });

  it('is held to the tempo asked for until it is met', () => {
    const slow = stands(attempts(SCALE, READY), { targetBpm: 96 }).get(exerciseId(SCALE));
    expect(slow).toMatchObject({ targetBpm: 96, inARow: 0, shortfalls: [{ kind: 'tempo', targetBpm: 96 }] });
  });

  it('stays so when it is met, save that a faster tempo may be aimed at', () => {
    const met = [{}, {}, {}, { targetBpm: 100, tempoBpm: 90 }];
    const after = stands(attempts(SCALE, met), { evennessPercent: 12 });
    expect(after.get(exerciseId(SCALE))).toMatchObject({ targetBpm: 100, leastBpm: 80, level: 'ready' });
    const uneven = stands(
      attempts(
        SCALE,
        READY.map(() => ({ evennessPercent: 11 })),
      ),
      { evennessPercent: 12 },
    );
    expect(uneven.get(exerciseId(SCALE))).toMatchObject({ level: 'ready' });
  });

  it('changes nothing for the others', () => {
    const other = { ...SCALE, key: 'A major' };
    const history = [...attempts(other, READY), ...attempts(SCALE, READY)];
    expect(stands(history, { inARow: 9 }).get(exerciseId(other))).toEqual(
      standingsOf(byExercise(history), DEFAULT_CRITERIA).get(exerciseId(other)),
    );
  });
});

const planned = (minutes: number, history: readonly Practised[], assigned: readonly AssignedExercise[]) =>
  today(minutes, history, NOW_MS, DEFAULT_CRITERIA, assigned);
const together: ExerciseChoice = { ...SCALE, hands: 'together' };

describe('the plan for today, where a teacher has assigned something', () => {
  it('has that and nothing else where nothing was played yet', () => {
    const plan = planned(20, [], [asked(), asked(together, { targetBpm: 50 })]);
    expect(plan).toMatchObject([
      { exercise: SCALE, targetBpm: 80, minutes: 10, reason: { kind: 'assigned' } },
      { exercise: together, targetBpm: 50, minutes: 10, reason: { kind: 'assigned' } },
    ]);
  });

  it('has it first, in the teacher’s order, and then what is due anyway', () => {
    const weak = { ...SCALE, key: 'G major' };
    const plan = planned(20, attempts(weak, [{ wrong: 2 }], 1), [asked(together), asked()]);
    expect(plan.map(({ exercise, reason }) => [reason.kind, exercise.hands, exercise.key])).toEqual([
      ['assigned', 'together', 'D major'],
      ['assigned', 'right', 'D major'],
      ['weak', 'right', 'G major'],
    ]);
  });

  it('lets the teacher decide when the hands go together', () => {
    const history = attempts(together, [{ handsApartMs: 90 }], 1);
    const kinds = (assigned: readonly AssignedExercise[]) =>
      planned(30, history, assigned).map(({ exercise, reason }) => `${reason.kind} ${exercise.hands}`);
    expect(kinds([]).slice(0, 2)).toEqual(['hand-first left', 'hand-first right']);
    expect(kinds([asked(together)])).toEqual(['assigned together']);
  });

  it('goes on to the next where there is no time for all', () => {
    const many = ['C major', 'G major', 'D major', 'A major'].map((key) => asked({ ...SCALE, key }));
    const keys = (history: readonly Practised[]) =>
      planned(10, history, many).map(({ exercise }) => exercise.key);
    expect(keys([])).toEqual(['C major', 'G major']);
    expect(keys(attempts({ ...SCALE, key: 'C major' }, [{ wrong: 1 }]))).toEqual(['G major', 'D major']);
  });

  it('leaves out what is met', () => {
    const plan = planned(20, attempts(SCALE, READY), [asked()]);
    expect(plan.map(({ reason }) => reason.kind)).toEqual(['upkeep', 'offer'].toReversed());
  });
});

const CHOICES = allChoices().filter(({ key }) => ['C major', 'G major', 'A minor', 'E minor'].includes(key));
const anyHistory = fc.array(
  fc.record({
    whenMs: fc.integer({ min: NOW_MS - 90 * DAY_MS, max: NOW_MS }),
    summary: fc
      .tuple(
        fc.constantFrom(...CHOICES.slice(0, 24)),
        fc.record({
          wrong: fc.constantFrom(0, 0, 0, 1, 3),
          evennessPercent: fc.option(fc.double({ min: 1, max: 20, noNaN: true })),
          targetBpm: fc.option(fc.constantFrom(60, 80)),
        }),
      )
      .map(([exercise, more]) => summary(exercise, more)),
  }),
  { maxLength: 60 },
);
const anyAssigned = fc.array(
  fc.record({
    exercise: fc.constantFrom(...CHOICES.slice(0, 30)),
    targetBpm: fc.option(fc.constantFrom(50, 80, 120)),
    inARow: fc.option(fc.integer({ min: 1, max: 4 })),
    evennessPercent: fc.option(fc.integer({ min: 3, max: 15 })),
    note: fc.constant(''),
    sinceMs: fc.integer({ min: NOW_MS - 60 * DAY_MS, max: NOW_MS }),
  }),
  { maxLength: 12 },
);
const anyMinutes = fc.integer({ min: -5, max: 120 });

describe('any plan with an assignment', () => {
  it('keeps to its time, has each exercise once, and is never empty', () => {
    fc.assert(
      fc.property(anyHistory, anyMinutes, anyAssigned, (history, minutes, assigned) => {
        const plan = planned(minutes, history, assigned);
        const sum = plan.reduce((total, item) => total + item.minutes, 0);
        expect(sum).toBeLessThanOrEqual(Math.max(0, minutes));
        expect(plan.every((item) => Number.isInteger(item.minutes) && item.minutes > 0)).toBe(true);
        const ids = plan.map(({ exercise }) => exerciseId(exercise));
        expect(new Set(ids).size).toBe(ids.length);
        expect(plan.length > 0).toBe(minutes > 0);
      }),
    );
  });

  it('has what is assigned first, in its order, and all of it where there is time', () => {
    fc.assert(
      fc.property(anyHistory, anyMinutes, anyAssigned, (history, minutes, assigned) => {
        const plan = planned(minutes, history, assigned);
        const open = assignmentsOf(assigned, byExercise(history), DEFAULT_CRITERIA)
          .filter(({ metMs }) => metMs === null)
          .map((one) => exerciseId(one.asked.exercise));
        const first = plan.filter(({ reason }) => reason.kind === 'assigned');
        expect(plan.slice(0, first.length)).toEqual(first);
        const ids = first.map(({ exercise }) => exerciseId(exercise));
        expect(ids).toEqual(open.filter((id) => ids.includes(id)));
        if (minutes >= 5 * open.length) expect(ids).toEqual(open.slice(0, Math.max(0, ids.length)));
        if (minutes >= 5 * open.length && minutes > 0) expect(ids).toHaveLength(open.length);
      }),
    );
  });

  it('has the hands that nobody assigned as ever: separate first, together only where each is ready', () => {
    fc.assert(
      fc.property(anyHistory, anyAssigned, (history, assigned) => {
        const groups = byExercise(history);
        const all = standingsOf(groups, DEFAULT_CRITERIA, assignmentsOf(assigned, groups, DEFAULT_CRITERIA));
        const ready = (choice: ExerciseChoice) => all.get(exerciseId(choice))?.level === 'ready';
        const own = planned(90, history, assigned).filter(({ reason }) => reason.kind !== 'assigned');
        const hands = own.map(({ exercise }) => exercise.hands === 'together');
        expect(hands).toEqual([...hands].sort((a, b) => Number(a) - Number(b)));
        for (const { exercise } of own) {
          if (exercise.hands !== 'together') continue;
          const each = (['left', 'right'] as const).every((one) => ready({ ...exercise, hands: one }));
          expect(ready(exercise) || each).toBe(true);
        }
      }),
    );
  });

  it('is the plan without one where all of it is met or there is none', () => {
    fc.assert(
      fc.property(anyHistory, anyMinutes, (history, minutes) => {
        expect(planned(minutes, history, [])).toEqual(today(minutes, history, NOW_MS, DEFAULT_CRITERIA));
      }),
    );
  });

  it('asks no longer for what was met, whatever is played after', () => {
    fc.assert(
      fc.property(anyHistory, anyHistory, anyAssigned, (before, after, assigned) => {
        const lastMs = Math.max(0, ...before.map(({ whenMs }) => whenMs));
        const later = after.map((one, index) => ({ ...one, whenMs: lastMs + 1 + index }));
        const met = (history: readonly Practised[]) =>
          assignmentsOf(assigned, byExercise(history), DEFAULT_CRITERIA).map(({ metMs }) => metMs);
        const [now, then] = [met(before), met([...before, ...later])];
        now.forEach((metMs, index) => metMs !== null && expect(then[index]).toBe(metMs));
      }),
    );
  });
});
