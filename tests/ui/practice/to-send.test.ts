import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../src/engine/index.ts';
import { nameFor } from '../../../src/io/history/entry.ts';
import type { Entry } from '../../../src/io/history/index.ts';
import { ofLate, sendable, toSend } from '../../../src/ui/practice/to-send.ts';
import { DAY_MS, NOW_MS, summary } from '../../engine/standing/history.ts';

const scale = (key: string): ExerciseChoice => ({ key, form: 'scale', hands: 'right', octaves: 2 });
const entry = (daysAgo: number, key: string, more: Partial<Entry> = {}): Entry => {
  const whenMs = NOW_MS - daysAgo * DAY_MS;
  return {
    id: nameFor(whenMs, 'abcd'),
    whenMs,
    state: 'told',
    name: 'x',
    remarks: [],
    device: null,
    choice: scale(key),
    targetBpm: 80,
    durationSec: 6,
    soundBytes: 0,
    reason: '',
    summary: summary(scale(key)),
    deletedMs: null,
    ...more,
  };
};
const ENTRIES = [
  entry(40, 'C major'),
  entry(20, 'E major'),
  entry(9, 'G major'),
  entry(8, 'D major'),
  entry(3, 'G major'),
  entry(2, 'D major', { state: 'no-report', summary: null }),
  entry(1, 'A major'),
];
const keys = (ids: readonly string[]) => ids.map((id) => ENTRIES.find((one) => one.id === id)!);

describe('what is sent to a teacher where nobody chooses', () => {
  it('is the newest attempt at each exercise of the last fortnight of practice, newest first', () => {
    expect(keys(toSend(ENTRIES))).toEqual([ENTRIES[6], ENTRIES[4], ENTRIES[3]]);
  });

  it('is of the last fortnight in which anything was played, however long ago', () => {
    expect(keys(toSend(ENTRIES.slice(0, 2)))).toEqual([ENTRIES[1]]);
    expect(toSend([])).toEqual([]);
  });

  it('is no more than goes into a file', () => {
    expect(toSend(ENTRIES, 2)).toHaveLength(2);
  });
});

describe('what can be sent', () => {
  it('is what came to a report, newest first', () => {
    const all = sendable(ENTRIES);
    expect(all).toHaveLength(6);
    expect(all[0]).toBe(ENTRIES[6]);
    expect(ofLate(all)).toBe(4);
    expect(ofLate([])).toBe(0);
  });
});
