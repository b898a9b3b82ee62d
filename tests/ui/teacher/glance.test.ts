import { describe, expect, it } from 'vitest';
import { DEFAULT_CRITERIA } from '../../../src/engine/index.ts';
import type { Playing } from '../../../src/io/teaching/index.ts';
import { commonFaults, glanceAt, isGrave, ordered } from '../../../src/ui/teacher/glance.ts';
import { inventedClass } from './invented-class.ts';

const NOW_MS = Date.UTC(2026, 10, 29, 12);
const WEEK_MS = 7 * 24 * 3600 * 1000;
const { students, files, playings } = inventedClass(1, 1, NOW_MS);
const [student] = students;
const [playing] = playings;
const EVEN = { wrong: 0, missed: 0, extra: 0, unsure: 0, evennessPercent: 3, lateCrossings: 0 };
const played = (summary: Partial<NonNullable<Playing['summary']>>, more: Partial<Playing> = {}): Playing => ({
  ...playing!,
  answeredMs: null,
  summary: { ...playing!.summary!, ...EVEN, ...summary },
  ...more,
});
const glance = (all: readonly Playing[], theirs = files) =>
  glanceAt(student!, { playings: all, files: theirs }, DEFAULT_CRITERIA, NOW_MS);

describe('one student at a glance', () => {
  it.each([
    { what: 'nothing, where all is at the criterion', all: [played({})], kind: 'none' },
    {
      what: 'wrong notes before uneven ones',
      all: [played({ evennessPercent: 30 }), played({ wrong: 3 })],
      kind: 'notes',
    },
    {
      what: '… but unevenness before one slip',
      all: [played({ evennessPercent: 30 }), played({ extra: 1 })],
      kind: 'evenness',
    },
    { what: 'what is answered no more', all: [played({ wrong: 3 }, { answeredMs: NOW_MS })], kind: 'none' },
  ])('has for its gravest trouble $what', ({ all, kind }) => {
    const { gravest } = glance(all);
    expect(gravest.kind === 'shortfall' ? gravest.shortfall.kind : gravest.kind).toBe(kind);
  });

  it('needs an ear most of all where nothing was recognised, until somebody has listened', () => {
    const silent = { ...files[0]!, untold: { notice: 'silence' as const } };
    expect(glance([], [silent]).gravest).toEqual({ kind: 'untold', count: 1 });
    expect(glance([], [{ ...silent, seenMs: NOW_MS }]).gravest).toEqual({ kind: 'none' });
    const lines = [glance([played({ wrong: 9 })]), glance([], [silent])];
    expect(ordered(lines, 'help')[0]!.gravest.kind).toBe('untold');
    expect(lines.map(isGrave)).toEqual([true, true]);
  });

  it('stands out where one note in six was not right, not for a slip or unevenness', () => {
    const expected = 24;
    const made = [{ wrong: 4 }, { wrong: 3 }, { extra: 1 }, { evennessPercent: 40 }];
    expect(made.map((one) => isGrave(glance([played({ expected, ...one })])))).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });

  it('has a pearl for each week, the best of it', () => {
    const at = (weeks: number) => ({ whenMs: NOW_MS - weeks * WEEK_MS - 1000 });
    const weeks = glance([
      played({ wrong: 9 }, at(0)),
      played({}, at(0)),
      played({ wrong: 9 }, at(2)),
      played({ extra: 1 }, at(3)),
      played({}, at(40)),
    ]).weeks;
    expect(weeks).toEqual(['new', 'new', 'new', 'new', 'nearly', 'not-yet', 'new', 'ready']);
  });
});

it('common faults are those of more than one student, most first', () => {
  const second = { ...student!, id: 's2' };
  const all = [
    played({ lateCrossings: 2, worstCrossingMs: 90 }),
    played({ lateCrossings: 2, worstCrossingMs: 90 }, { id: 'x', studentId: 's2' }),
    played({ wrong: 4 }, { id: 'y', studentId: 's2' }),
  ];
  expect(commonFaults([student!, second], all, DEFAULT_CRITERIA)).toEqual([
    { kind: 'crossings', students: 2 },
  ]);
});
