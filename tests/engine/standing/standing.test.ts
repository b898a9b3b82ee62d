import { describe, expect, it } from 'vitest';
import {
  criteriaAt,
  DEFAULT_CRITERIA,
  evenAt,
  exerciseId,
  shortfalls,
  standingOf,
  summarise,
  USUAL_GOALS,
  type AttemptSummary,
  type ExerciseChoice,
  type Goals,
  type Practised,
  type Shortfall,
} from '../../../src/engine/index.ts';
import type { Statement } from '../../../src/engine/report/words/index.ts';
import { atCriterion } from '../../../src/engine/report/words/standing.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';
import { tell } from '../report/words/scenes.ts';
import { attempts, DAY_MS, NOW_MS, READY, summary, standings } from './history.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const stand = (made: readonly Partial<AttemptSummary>[], tempi: readonly number[] = []) =>
  standingOf(SCALE, attempts(SCALE, made), DEFAULT_CRITERIA, tempi);

const WRONG = { wrong: 1 };

/** What counts as even at the tempo of these attempts, 81 with two notes a beat. */
const BOUND = evenAt(DEFAULT_CRITERIA, 60_000 / 81 / 2).evennessPercent;

describe('touch and loudness', () => {
  /** two notes a beat at 81: 370 ms from note to note, of which a tenth silent is heard */
  const asked = { ...DEFAULT_CRITERIA, touch: 'legato', loudnessDb: 3 } as const;
  const gap = (ms: number) => ({ overlapMs: { value: -ms, plusMinus: 30 } });
  const uneven = (value: number) => ({ loudnessDb: { value, plusMinus: 0.5 } });
  it.each<readonly [string, Partial<AttemptSummary>, Partial<Shortfall> | null]>([
    ['not heard', {}, null],
    ['joined', gap(-20), null],
    ['with gaps that may be none', gap(100), null],
    ['surely detached', gap(110), { kind: 'touch', meant: 'legato', gapMs: 110, narrow: false }],
    ['as uneven as may be', uneven(3), null],
    ['that may be within the bound', uneven(4.1), null],
    ['surely more uneven', uneven(4.2), { kind: 'loudness', db: 4.2, bound: 3, narrow: true }],
    ['far more uneven', uneven(6), { kind: 'loudness', db: 6, narrow: false }],
  ])('%s count where they are asked for and heard', (_, more, expected) => {
    const found = shortfalls(summary(SCALE, more), asked, 80);
    if (expected === null) expect(found).toEqual([]);
    else expect(found).toMatchObject([expected]);
    expect(shortfalls(summary(SCALE, more), DEFAULT_CRITERIA, 80)).toEqual([]);
  });

  it('are what the lowest level that asks for an exercise says of them, in its report too', () => {
    const [level] = USUAL_GOALS.syllabus.levels;
    const asks = [{ form: 'scale', octaves: 2, leastBpm: 60, together: true, touch: 'staccato' } as const];
    const syllabus = { ...USUAL_GOALS.syllabus, levels: [{ ...level!, keys: ['D major'], asks }] };
    const goals = { ...USUAL_GOALS, syllabus };
    expect(criteriaAt(goals, SCALE, DEFAULT_CRITERIA)).toMatchObject({ touch: 'staccato', loudnessDb: null });
    expect(criteriaAt(goals, { ...SCALE, octaves: 1 }, DEFAULT_CRITERIA).touch).toBeNull();
    const made = attempts(SCALE, [gap(-20), gap(-20), gap(-20)]);
    const of = (by: Goals) => standings(made, DEFAULT_CRITERIA, by).get(exerciseId(SCALE))!;
    expect(of(USUAL_GOALS).level).toBe('ready');
    expect(of(goals)).toMatchObject({ level: 'not-yet', shortfalls: [{ kind: 'touch' }] });
  });
});

describe('what keeps an attempt from the criterion', () => {
  const CASES: readonly (readonly [string, Partial<AttemptSummary>, Partial<Shortfall> | null])[] = [
    ['nothing', {}, null],
    ['one wrong note', { wrong: 1 }, { kind: 'notes', wrong: 1, narrow: true }],
    ['three missed notes', { missed: 3 }, { kind: 'notes', missed: 3, narrow: false }],
    ['several faults', { wrong: 1, extra: 2 }, { kind: 'notes', wrong: 1, extra: 2, narrow: false }],
    ['one wrong note and one missed', { wrong: 1, missed: 1 }, { kind: 'notes', wrong: 1, narrow: false }],
    [
      'one missed note and one too many',
      { missed: 1, extra: 1 },
      { kind: 'notes', missed: 1, narrow: false },
    ],
    ['evenness at its bound', { evennessPercent: BOUND }, null],
    [
      'evenness just over it',
      { evennessPercent: 5.42 },
      { kind: 'evenness', percent: 5.42, bound: BOUND, narrow: true },
    ],
    ['evenness far over it', { evennessPercent: 14 }, { kind: 'evenness', narrow: false }],
    ['evenness not measured', { evennessPercent: null }, { kind: 'evenness-unknown', narrow: false }],
    [
      'one late crossing',
      { lateCrossings: 1, worstCrossingMs: 92 },
      { kind: 'crossings', count: 1, narrow: true },
    ],
    [
      'late crossings',
      { lateCrossings: 2, worstCrossingMs: 92 },
      { kind: 'crossings', worstMs: 92, narrow: false },
    ],
    ['spread chords', { chordSpreadMs: 55 }, { kind: 'chords', ms: 55, bound: 40, narrow: true }],
    ['hands apart', { handsApartMs: 90 }, { kind: 'hands', ms: 90, bound: 40, narrow: false }],
    ['tempo within a step of the aim', { tempoBpm: 77.7 }, null],
    ['tempo a little under it', { tempoBpm: 77 }, { kind: 'tempo', bpm: 77, targetBpm: 80, narrow: true }],
    ['tempo far under it', { tempoBpm: 60 }, { kind: 'tempo', bpm: 60, narrow: false }],
    ['tempo not measured', { tempoBpm: null }, { kind: 'tempo-unknown', narrow: false }],
    ['no aim', { tempoBpm: 60, targetBpm: null }, null],
    ['notes that could not be told', { unsure: 2 }, { kind: 'unsure', count: 2, of: 13, narrow: true }],
  ];
  it.each(CASES)('%s', (_name, more, expected) => {
    const attempt = summary(SCALE, more);
    const found = shortfalls(attempt, DEFAULT_CRITERIA, attempt.targetBpm);
    expect(found).toHaveLength(expected === null ? 0 : 1);
    if (expected !== null) expect(found[0]).toMatchObject(expected);
  });

  it('takes what was to be practised for done also where something else is said beside it', () => {
    const right = tell({ choice: SCALE });
    const said = right.words.said!;
    const intention = { times: 1, rhythm: 'long-short' } as const;
    const [beside] = said.statements;
    const doneOf = (...statements: readonly Statement[]) =>
      summarise({
        ...right,
        practised: { intention, repeats: 1 },
        words: { ...right.words, said: { ...said, statements } },
      }).practised;
    const practised = (outcome: 'done' | 'nearly'): Statement => ({
      situation: 'practised',
      steps: [],
      faults: 0,
      outcome,
      rhythm: 'long-short',
      wanted: 1,
      right: 1,
      rightAtEnd: 1,
      repeats: 1,
      lacks: [],
    });
    expect(doneOf(practised('done'), beside!)).toEqual({ intention, done: true });
    expect(doneOf(practised('nearly'), beside!)).toEqual({ intention, done: false });
    expect(doneOf(beside!)).toEqual({ intention, done: false });
  });

  it.each(Object.entries(INVENTED))('agrees with the report itself: %s', (_name, made) => {
    const { report } = invent(made);
    const kept = summarise(report);
    expect(shortfalls(kept, DEFAULT_CRITERIA, report.targetBpm).length === 0).toBe(
      atCriterion(report, DEFAULT_CRITERIA, report.targetBpm),
    );
  });

  it('counts a common tone that may have been held over neither as struck nor as in doubt', () => {
    const report = tell({ choice: SCALE, bpm: 80 });
    const [kept] = report.notes;
    const doubt = { midi: kept!.midi, hand: 'right', step: 0, reason: 'too faint' } as const;
    const doubtful = {
      ...report,
      unsure: [doubt, { ...doubt, step: 1 }, { ...doubt, heldOver: true }],
    } as const;
    expect(summarise(report)).toMatchObject({ unsure: 0, expected: 29 });
    expect(summarise(doubtful)).toMatchObject({ unsure: 2, expected: 31 });
  });

  it.each([76, 78, 80, 84])('agrees with reports of played notes at %i', (bpm) => {
    const arpeggio: ExerciseChoice = { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 };
    for (const lateMs of [0, 60, 120]) {
      const report = tell(
        { choice: arpeggio, bpm, change: (step) => (step === 4 ? { lateMs } : {}) },
        { targetBpm: 80 },
      );
      const found = shortfalls(summarise(report), DEFAULT_CRITERIA, 80);
      expect(found.length === 0).toBe(atCriterion(report, DEFAULT_CRITERIA, 80));
    }
  });
});

describe('where an exercise stands', () => {
  it('is new without attempts', () => {
    expect(standingOf(SCALE, [], DEFAULT_CRITERIA)).toMatchObject({
      level: 'new',
      lastMs: null,
      attempts: 0,
    });
  });

  it('is ready after three in a row at the criterion', () => {
    expect(stand([{ wrong: 2 }, ...READY])).toMatchObject({
      level: 'ready',
      inARow: 3,
      wanted: 3,
      attempts: 4,
      shortfalls: [],
    });
  });

  it('is nearly ready after one or two', () => {
    expect(stand([{ wrong: 2 }, {}, {}])).toMatchObject({ level: 'nearly', inARow: 2 });
    expect(stand([{}])).toMatchObject({ level: 'nearly', inARow: 1 });
  });

  it('is nearly ready where one thing is narrowly missed', () => {
    expect(stand([...READY, { evennessPercent: 6 }])).toMatchObject({ level: 'nearly', inARow: 0 });
    expect(stand([...READY, { evennessPercent: 13 }])).toMatchObject({ level: 'not-yet', inARow: 0 });
  });

  it('is not ready yet where two things are missing, the notes first', () => {
    const { level, shortfalls: missing } = stand([{ evennessPercent: 6, wrong: 1 }]);
    expect(level).toBe('not-yet');
    expect(missing.map(({ kind }) => kind)).toEqual(['notes', 'evenness']);
  });

  it('is ready only from the least tempo on that is asked for, whatever was aimed at', () => {
    const at = (tempoBpm: number) => READY.map(() => ({ tempoBpm, targetBpm: 120 }));
    expect(stand(at(66), [66])).toMatchObject({ level: 'ready', leastBpm: 66 });
    expect(stand(at(60), [66])).toMatchObject({
      level: 'nearly',
      inARow: 0,
      shortfalls: [{ kind: 'tempo', bpm: 60, targetBpm: 66 }],
    });
    expect(stand(at(50), [66]).level).toBe('not-yet');
    expect(stand(at(30), []).level).toBe('ready');
  });

  it('is judged by the fastest of several tempi at which it is ready, and knows the next', () => {
    const at = (tempoBpm: number) => READY.map(() => ({ tempoBpm }));
    expect(stand(at(55), [60, 80])).toMatchObject({ level: 'nearly', leastBpm: 60, nextBpm: null });
    expect(stand(at(70), [60, 80])).toMatchObject({ level: 'ready', leastBpm: 60, nextBpm: 80 });
    expect(stand(at(81), [60, 80])).toMatchObject({ level: 'ready', leastBpm: 80, nextBpm: null });
  });

  it('is not ready on one day, however often it goes well on it', () => {
    const onDays = (...days: readonly number[]): readonly Practised[] =>
      days.map((day, index) => ({
        whenMs: NOW_MS + day * DAY_MS + index * 60_000,
        summary: summary(SCALE),
      }));
    const level = (...days: readonly number[]) => standingOf(SCALE, onDays(...days), DEFAULT_CRITERIA);
    expect(level(0, 0, 0, 0, 0)).toMatchObject({ level: 'nearly', inARow: 5, days: 1, wantedDays: 2 });
    expect(level(0, 0, 1)).toMatchObject({ level: 'ready', inARow: 3, days: 2 });
    expect(level(0, 1)).toMatchObject({ level: 'nearly', inARow: 2, days: 2 });
  });

  it.each<[string, readonly (readonly Partial<AttemptSummary>[])[], { days: number; right: number }]>([
    [
      'whatever comes after it',
      [
        [WRONG, {}],
        [{}, {}],
        [WRONG, {}],
      ],
      { days: 3, right: 1 },
    ],
    ['the only try of its day too', [[{}, WRONG], [WRONG]], { days: 2, right: 1 }],
    ['the last five days', [[WRONG], [WRONG], [{}], [{}], [{}], [WRONG, {}]], { days: 5, right: 3 }],
  ])('counts the first try of each day: %s', (_, days, cold) => {
    const history = days.flatMap((day, at) =>
      day.map((more, index) => ({
        whenMs: NOW_MS + at * DAY_MS + index * 60_000,
        summary: summary(SCALE, more),
      })),
    );
    expect(standingOf(SCALE, history, DEFAULT_CRITERIA).cold).toEqual(cold);
  });

  it('is not lost by a try at a clearly faster tempo that goes wrong, and is by one at its own', () => {
    expect(stand([...READY, { wrong: 2, tempoBpm: 120 }], [66]).level).toBe('ready');
    expect(stand([...READY, { wrong: 2, tempoBpm: 70 }], [66]).level).toBe('not-yet');
  });

  it.each([
    [88, 'not-yet'],
    [88.1, 'ready'],
  ])(
    'takes for a faster tempo than 80 one that is over a tenth faster: after a failure at %f it is %s',
    (bpm, level) => {
      expect(stand([...READY, { wrong: 2, tempoBpm: bpm }], [80]).level).toBe(level);
    },
  );

  it('was returned to as often as more than three and a half days lay between two attempts, the first two also', () => {
    const hour = DAY_MS / 24;
    const days = (...gaps: readonly number[]) => {
      let whenMs = NOW_MS;
      const made = [0, ...gaps].map((gap) => ({ whenMs: (whenMs += gap), summary: summary(SCALE) }));
      return standingOf(SCALE, made, DEFAULT_CRITERIA).returns;
    };
    expect(days(DAY_MS, DAY_MS)).toBe(0);
    expect(days(4 * DAY_MS, DAY_MS)).toBe(1);
    expect(days(4 * DAY_MS, 3.5 * DAY_MS + hour, 3.5 * DAY_MS - hour)).toBe(2);
  });

  it('is ready hands together only where each hand alone is, or once was', () => {
    const of = (hands: ExerciseChoice['hands'], made: readonly Partial<AttemptSummary>[], daysAgo = 0) =>
      attempts({ ...SCALE, hands }, made, daysAgo);
    const together = (...history: readonly Practised[]) =>
      standings(history, DEFAULT_CRITERIA).get('D major|scale|2||together')!;
    expect(together(...of('together', READY))).toMatchObject({
      level: 'nearly',
      waitsFor: ['left', 'right'],
    });
    expect(together(...of('together', READY), ...of('right', READY))).toMatchObject({ waitsFor: ['left'] });
    const once = of('left', [...READY, { wrong: 2 }], 1);
    expect(together(...of('together', READY), ...of('right', READY), ...once)).toMatchObject({
      level: 'ready',
      waitsFor: [],
    });
  });

  it.each<[string, readonly Partial<AttemptSummary>[], readonly string[]]>([
    ['three at the criterion, one after the other', [{}, {}, {}, { wrong: 2 }], []],
    ['a failure among them', [{}, {}, { wrong: 2 }, {}, { wrong: 2 }], ['left']],
    [
      'a failure among them at a clearly faster tempo',
      [{}, {}, { wrong: 2, tempoBpm: 120 }, {}, { wrong: 2 }],
      [],
    ],
  ])('takes a hand for once ready or not by %s', (_, made, waitsFor) => {
    const history = (['together', 'right'] as const).flatMap((hands) => attempts({ ...SCALE, hands }, READY));
    const left = attempts({ ...SCALE, hands: 'left' }, made);
    const [level] = USUAL_GOALS.syllabus.levels;
    const asks = [{ form: 'scale', octaves: 2, leastBpm: 80, together: true } as const];
    const goals = {
      ...USUAL_GOALS,
      syllabus: { ...USUAL_GOALS.syllabus, levels: [{ ...level!, keys: ['D major'], asks }] },
    };
    const together = standings([...history, ...left], DEFAULT_CRITERIA, goals).get(
      'D major|scale|2||together',
    )!;
    expect(together.waitsFor).toEqual(waitsFor);
  });

  it('follows the criteria', () => {
    const kind = { ...DEFAULT_CRITERIA, evennessPercent: 12, readyInARow: 1, readyDays: 1 };
    expect(standingOf(SCALE, attempts(SCALE, [{ evennessPercent: 7 }]), kind).level).toBe('ready');
  });
});
