import { describe, expect, it } from 'vitest';
import { CHANGE, changesSince } from '../../../src/engine/standing/index.ts';
import type { Measures } from '../../../src/engine/index.ts';
import { descriptionsIn } from '../../support/descriptions.ts';
import { invent } from '../../terminal/invented.ts';

const CHOICE = { key: 'D major', form: 'scale', hands: 'right', octaves: 1 } as const;
const attempt = (measures: Partial<Measures>, missed = 0) =>
  invent({
    choice: CHOICE,
    missed: Array.from({ length: missed }, (_, step) => ({ step: step + 2, hand: 'right' as const })),
    measures,
  });

describe('what changed since an earlier attempt', () => {
  it('says what its fields are in words of its own', () => {
    expect(descriptionsIn(CHANGE)).toHaveLength(2);
    expect(descriptionsIn(CHANGE).filter((text) => !/\w+\W+\w+/.test(text))).toEqual([]);
  });

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

  it.each(['evennessPercent', 'chordSpreadMs', 'loudnessEvennessDb', 'tempoBpm'] as const)(
    'is nothing of %s where only one of them has it',
    (figure) => {
      const [without, with_] = [attempt({}), attempt({ [figure]: { value: 3 } })];
      expect(changesSince(without, with_)).toEqual([]);
      expect(changesSince(with_, without)).toEqual([]);
    },
  );

  it.each([
    ['chordSpreadMs', 'spread'],
    ['loudnessEvennessDb', 'loudness'],
  ] as const)('is told of %s as %s', (figure, kind) => {
    const [a, b] = [20, 10].map((value) => attempt({ [figure]: { value } }));
    expect(changesSince(a!, b!)).toEqual([{ kind, before: 20, now: 10, better: true }]);
  });

  it.each([
    [102.9, []],
    [103.1, [{ kind: 'tempo', before: 100, now: 103.1, better: null }]],
    [97.1, []],
    [96.9, [{ kind: 'tempo', before: 100, now: 96.9, better: null }]],
  ])('of the tempo is what is over three hundredths of it: from 100 to %f', (now, wanted) => {
    const [a, b] = [100, now].map((value) => attempt({ tempoBpm: { value } }));
    expect(changesSince(a!, b!)).toEqual(wanted);
  });
});
