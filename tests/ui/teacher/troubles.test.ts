import { describe, expect, it } from 'vitest';
import { spotsOf } from '../../../src/ui/plots/pearls/spots.ts';
import { troubleFrom, troublesOf } from '../../../src/ui/teacher/troubles.ts';
import { placeOfSpot } from '../../../src/ui/teacher/words.ts';
import { spotOf } from '../../../src/ui/review/marks/marks.ts';
import { invent, type Invention } from '../support/invent.ts';

const CHOICE = { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 } as const;
const of = (made: Omit<Invention, 'choice'>) => {
  const { report, exercise } = invent({ choice: CHOICE, ...made });
  const plain = { ...report, words: { ...report.words, steps: made.words?.steps ?? [] } };
  const spots = spotsOf(plain, exercise);
  return { report: plain, spots, troubles: troublesOf(plain, spots) };
};

describe('trouble spots', () => {
  it.each([
    ['a wrong note', { wrong: [{ step: 4, hand: 'right', midi: 77, name: 'F5' }] }, [4]],
    ['a missed note', { missed: [{ step: 7, hand: 'right' }] }, [7]],
    ['a note in doubt', { unsure: [{ step: 2, hand: 'right' }] }, [2]],
    ['a late crossing', { late: { 3: 120 } }, [3]],
    ['what the verdict names', { words: { steps: [5, 6] } }, [5, 6]],
    ['nothing where all is well', {}, []],
  ] as const)('hold %s', (_, made, steps) => {
    expect(of(made).troubles.map(({ spot }) => spot.step)).toEqual(steps);
  });

  it('hold an extra note by itself', () => {
    const extra = { step: 4, hand: 'right', afterMs: 150, midi: 79, name: 'G5', kind: 'slip' } as const;
    expect(of({ extra: [extra] }).troubles.map(({ spot }) => spot.extra)).toEqual([true]);
  });

  it('play from before the note before them', () => {
    const { troubles, spots } = of({ missed: [{ step: 7, hand: 'right' }] });
    const before = spots.find(({ step }) => step === 6)!;
    expect(troubles[0]!.range.fromSec).toBeLessThan(before.timeSec);
    expect(troubles[0]!.range.toSec).toBeGreaterThan(before.timeSec);
  });

  it('are gone through to and fro, and stay at either end', () => {
    const { troubles } = of({ missed: [2, 7, 9].map((step) => ({ step, hand: 'right' as const })) });
    const [first, second, third] = troubles.map(({ spot }) => spot.index);
    const from = (at: number | null, direction: 1 | -1) => troubleFrom(troubles, at, direction)?.spot.index;
    expect([from(null, 1), from(null, -1)]).toEqual([first, third]);
    expect([from(first!, 1), from(second!, 1), from(third!, 1)]).toEqual([second, third, third]);
    expect([from(third!, -1), from(first!, -1)]).toEqual([second, first]);
    expect(from(second! + 1, -1)).toBe(second);
    expect(troubleFrom([], null, 1)).toBeNull();
  });
});

describe('the place of a remark', () => {
  it('leads back to the spot it was made of, whatever happened there', () => {
    const { spots } = of({
      wrong: [{ step: 4, hand: 'right', midi: 77, name: 'F5' }],
      missed: [{ step: 7, hand: 'right' }],
      extra: [{ step: 9, hand: 'right', afterMs: 150, midi: 79, name: 'G5', kind: 'slip' }],
    });
    for (const spot of spots) expect(spotOf(spots, placeOfSpot(spot))).toBe(spot);
  });
});
