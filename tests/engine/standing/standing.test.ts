import { describe, expect, it } from 'vitest';
import {
  DEFAULT_CRITERIA,
  evenAt,
  shortfalls,
  standingOf,
  summarise,
  type AttemptSummary,
  type ExerciseChoice,
  type Shortfall,
} from '../../../src/engine/index.ts';
import { atCriterion } from '../../../src/engine/report/words/standing.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';
import { tell } from '../report/words/scenes.ts';
import { attempts, READY, summary } from './history.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const stand = (made: readonly Partial<AttemptSummary>[]) =>
  standingOf(SCALE, attempts(SCALE, made), DEFAULT_CRITERIA);

/** What counts as even at the tempo of these attempts, 81 with two notes a beat. */
const BOUND = evenAt(DEFAULT_CRITERIA, 60_000 / 81 / 2).evennessPercent;

describe('what keeps an attempt from the criterion', () => {
  const CASES: readonly (readonly [string, Partial<AttemptSummary>, Partial<Shortfall> | null])[] = [
    ['nothing', {}, null],
    ['one wrong note', { wrong: 1 }, { kind: 'notes', wrong: 1, narrow: true }],
    ['three missed notes', { missed: 3 }, { kind: 'notes', missed: 3, narrow: false }],
    ['several faults', { wrong: 1, extra: 2 }, { kind: 'notes', wrong: 1, extra: 2, narrow: false }],
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

  it('judges all attempts by the tempo aimed at last', () => {
    expect(stand([...READY, { targetBpm: 96, tempoBpm: 97 }])).toMatchObject({ level: 'nearly', inARow: 1 });
  });

  it('follows the criteria', () => {
    const kind = { ...DEFAULT_CRITERIA, evennessPercent: 12, readyInARow: 1 };
    expect(standingOf(SCALE, attempts(SCALE, [{ evennessPercent: 7 }]), kind).level).toBe('ready');
  });
});
