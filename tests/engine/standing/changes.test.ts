import { describe, expect, it } from 'vitest';
import { changesSince } from '../../../src/engine/index.ts';
import type { Measures } from '../../../src/engine/index.ts';
import { invent } from '../../terminal/invented.ts';

const CHOICE = { key: 'D major', form: 'scale', hands: 'right', octaves: 1 } as const;
const attempt = (measures: Partial<Measures>, missed = 0) =>
  invent({
    choice: CHOICE,
    missed: Array.from({ length: missed }, (_, step) => ({ step: step + 2, hand: 'right' as const })),
    measures,
  });

describe('what changed since an earlier attempt', () => {
  it('is nothing where it went as before', () => {
    const same = attempt({ evennessPercent: { value: 8, plusMinus: 1 }, tempoBpm: { value: 80 } });
    expect(changesSince(same, same)).toEqual([]);
  });

  it('is said of mistakes first, then of what was measured, with both figures', () => {
    const before = attempt({ evennessPercent: { value: 12, plusMinus: 0.5 }, tempoBpm: { value: 60 } }, 2);
    const now = attempt({ evennessPercent: { value: 7, plusMinus: 0.5 }, tempoBpm: { value: 80 } });
    expect(changesSince(before, now)).toEqual([
      { kind: 'mistakes', before: 2, now: 0, better: true },
      { kind: 'evenness', before: 12, now: 7, better: true },
      { kind: 'tempo', before: 60, now: 80, better: null },
    ]);
    expect(changesSince(now, before)[0]).toMatchObject({ kind: 'mistakes', better: false });
  });

  it.each([
    ['within the doubt of both figures', 10, 8, 1, []],
    ['beyond it', 10, 6, 1, [{ kind: 'evenness', before: 10, now: 6, better: true }]],
  ])('a figure %s', (_, before, now, plusMinus, wanted) => {
    const [a, b] = [before, now].map((value) => attempt({ evennessPercent: { value, plusMinus } }));
    expect(changesSince(a!, b!)).toEqual(wanted);
  });

  it('is nothing of what only one of them has', () => {
    expect(changesSince(attempt({}), attempt({ evennessPercent: { value: 3 } }))).toEqual([]);
  });
});
