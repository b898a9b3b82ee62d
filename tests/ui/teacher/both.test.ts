import { describe, expect, it } from 'vitest';
import type { Assigned } from '../../../src/io/review/index.ts';
import { bothOf, withChanged, withMoved, without } from '../../../src/ui/teacher/state/both.ts';

describe('words typed in two windows', () => {
  it.each([
    { what: 'nobody else wrote', now: 'old', typed: 'new', kept: 'new' },
    { what: 'both wrote the same', now: 'new', typed: 'new', kept: 'new' },
    { what: 'the other one wrote too', now: 'theirs', typed: 'mine', kept: 'theirs\n\nmine' },
    { what: 'the other one wiped it', now: '', typed: 'mine', kept: 'mine' },
    { what: 'this one wiped what the other wrote', now: 'theirs', typed: '', kept: 'theirs' },
    { what: 'this one wiped it', now: 'old', typed: '', kept: '' },
  ])('$what', ({ now, typed, kept }) => {
    expect(bothOf(now, 'old', typed)).toBe(kept);
  });
});

describe('what is assigned in two windows', () => {
  const assigned = (key: Assigned['exercise']['key'], more: Partial<Assigned> = {}): Assigned => ({
    exercise: { key, form: 'scale', hands: 'right', octaves: 2 },
    targetBpm: null,
    inARow: null,
    evennessPercent: null,
    note: '',
    ...more,
  });
  const [c, d, e] = [assigned('C major'), assigned('D major'), assigned('E major')];
  const keys = (all: readonly Assigned[]) => all.map(({ exercise }) => exercise.key);

  it('keeps both fields of one exercise that two windows change', () => {
    const theirs = withChanged([c, d], c, { note: 'slowly' });
    expect(withChanged(theirs, c, { targetBpm: 60 })[0]).toMatchObject({ note: 'slowly', targetBpm: 60 });
  });
  it('is changed and moved where it stands now', () => {
    expect(withChanged([d, c], c, { targetBpm: 60 })[1]).toMatchObject({ targetBpm: 60 });
    expect(keys(withMoved([e, c, d], d, -1))).toEqual(['E major', 'D major', 'C major']);
    expect(keys(withMoved([e, c], e, -1))).toEqual(['E major', 'C major']);
  });
  it('comes back where it is changed here and was taken away there', () => {
    expect(withChanged([d], c, { note: 'slowly' })).toEqual([d, assigned('C major', { note: 'slowly' })]);
  });
  it('stays where it is taken away here and was changed there', () => {
    const theirs = assigned('C major', { note: 'slowly' });
    expect(without([theirs, d], c)).toEqual([theirs, d]);
    expect(without([c, d], c)).toEqual([d]);
  });
});
