import { describe, expect, it } from 'vitest';
import {
  DEFAULT_CRITERIA,
  shortfalls,
  standingOf,
  summarise,
  type AttemptSummary,
  type ExerciseChoice,
} from '../../../src/engine/index.ts';
import { atCriterion } from '../../../src/engine/report/words/standing.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';
import { tell } from '../report/words/scenes.ts';
import { attempts, READY, summary } from './history.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const stand = (made: readonly Partial<AttemptSummary>[]) =>
  standingOf(SCALE, attempts(SCALE, made), DEFAULT_CRITERIA);

describe('what keeps an attempt from the criterion', () => {
  const CASES: readonly (readonly [string, Partial<AttemptSummary>, string | null, boolean])[] = [
    ['nothing', {}, null, false],
    ['one wrong note', { wrong: 1 }, 'one note was wrong', true],
    ['three missed notes', { missed: 3 }, 'three notes were missed', false],
    ['several faults', { wrong: 1, extra: 2 }, 'of the notes, one wrong, two too many', false],
    ['evenness at its bound', { evennessPercent: 8 }, null, false],
    [
      'evenness just over it',
      { evennessPercent: 9.42 },
      'varied by 9.4 %, and up to 8 % counts as even',
      true,
    ],
    ['evenness far over it', { evennessPercent: 14 }, 'varied by 14.0 %', false],
    ['evenness not measured', { evennessPercent: null }, 'its evenness could not be measured', false],
    ['one late crossing', { lateCrossings: 1, worstCrossingMs: 92 }, 'one crossing came 92 ms late', true],
    [
      'late crossings',
      { lateCrossings: 2, worstCrossingMs: 92 },
      'two crossings came late, the worst by 92 ms',
      false,
    ],
    ['spread chords', { chordSpreadMs: 55 }, 'the notes of a chord came 55 ms apart, and up to 40 ms', true],
    ['hands apart', { handsApartMs: 90 }, 'the hands were 90 ms apart, and up to 40 ms', false],
    ['tempo within a step of the aim', { tempoBpm: 77.7 }, null, false],
    ['tempo a little under it', { tempoBpm: 77 }, 'it went at 77, and the aim is 80', true],
    ['tempo far under it', { tempoBpm: 60 }, 'it went at 60, and the aim is 80', false],
    ['no aim', { tempoBpm: 60, targetBpm: null }, null, false],
    ['notes that could not be told', { unsure: 2 }, 'two of 13 notes could not be told', true],
  ];
  it.each(CASES)('%s', (_name, more, says, narrow) => {
    const attempt = summary(SCALE, more);
    const found = shortfalls(attempt, DEFAULT_CRITERIA, attempt.targetBpm);
    expect(found).toHaveLength(says === null ? 0 : 1);
    if (says !== null) {
      expect(found[0]!.says).toContain(says);
      expect(found[0]!.narrow).toBe(narrow);
    }
  });

  it.each(Object.entries(INVENTED))('agrees with the report itself: %s', (_name, made) => {
    const { report } = invent(made);
    const kept = summarise(report);
    expect(shortfalls(kept, DEFAULT_CRITERIA, report.targetBpm).length === 0).toBe(
      atCriterion(report, DEFAULT_CRITERIA, report.targetBpm),
    );
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
      attempts: 4,
      reason: 'The last three attempts were right and even, at 80.',
      missing: '',
    });
  });

  it('is nearly ready after two, and says what is missing', () => {
    expect(stand([{ wrong: 2 }, {}, {}])).toMatchObject({
      level: 'nearly',
      reason: 'The last two attempts were right and even, at 80.',
      missing: 'One more like it makes it ready.',
    });
    expect(stand([{}]).missing).toBe('Two more like it make it ready.');
  });

  it('is nearly ready where one thing is narrowly missed', () => {
    expect(stand([...READY, { evennessPercent: 9 }])).toMatchObject({
      level: 'nearly',
      inARow: 0,
      reason: 'Last time the time from note to note varied by 9.0 %, and up to 8 % counts as even.',
      missing: 'The same, with the pulse.',
    });
  });

  it('is not ready yet where two are, and names the second', () => {
    const { level, missing } = stand([{ evennessPercent: 9, wrong: 1 }]);
    expect(level).toBe('not-yet');
    expect(missing).toBe(
      'Also, the time from note to note varied by 9.0 %, and up to 8 % counts as even. Slower, until every note is right.',
    );
  });

  it('judges all attempts by the tempo aimed at last', () => {
    expect(stand([...READY, { targetBpm: 96, tempoBpm: 97 }])).toMatchObject({ level: 'nearly', inARow: 1 });
  });

  it('follows the criteria', () => {
    const kind = { ...DEFAULT_CRITERIA, evennessPercent: 12, readyInARow: 1 };
    expect(standingOf(SCALE, attempts(SCALE, [{ evennessPercent: 11 }]), kind).level).toBe('ready');
  });
});
