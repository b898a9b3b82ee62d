import { describe, expect, it } from 'vitest';
import { faultCount } from '../../../src/engine/index.ts';
import { bestOf, sameExercise } from '../../../src/ui/report/compare/best.ts';
import { differenceRows, differenceWords } from '../../../src/ui/report/compare/differences.ts';
import { compareStrings } from '../../../src/ui/report/compare/strings.ts';
import { invent, INVENTED, type Invention } from '../support/invent.ts';

const plain = (text: string): string => text.replaceAll('\u202f', ' ');
const late = invent(INVENTED.lateThumb);
const better = invent({ choice: INVENTED.lateThumb.choice, late: { 1: 20 }, tempoBpm: 84 });
const ALL = Object.entries(INVENTED) as [string, Invention][];

describe('what is different', () => {
  it('is said in words where it stands out: crossings, tempo', () => {
    const words = differenceWords(late, better).map(plain);
    expect(words).toContain('The crossing into C, note 2, comes nearer its time: +92 ms before, +20 ms now.');
    expect(words).toContain('Faster: 77 before, 84 now.');
    expect(words.join(' ')).not.toMatch(/loudness/);
  });

  it('is nothing between an attempt and itself', () => {
    expect(differenceWords(late, late)).toEqual(['No difference worth telling.']);
    for (const { change } of differenceRows(late, late)) expect(change).toMatch(/^0(\.0)?/);
  });

  it('counts what went otherwise, and names the notes', () => {
    const wrong = invent({
      choice: INVENTED.lateThumb.choice,
      missed: [{ step: 5, hand: 'right' }],
    });
    expect(differenceWords(wrong, late)).toContain('E♭, note 6, is now right.');
    expect(differenceWords(late, wrong)).toContain('More notes went wrong: 0 before, 1 now.');
  });

  it('is not said where a figure moved less than its ±', () => {
    const { measures } = late.report;
    const near = { ...measures, evennessPercent: { value: 9.9, plusMinus: 0.41 } };
    const words = differenceWords(late, { ...late, report: { ...late.report, measures: near } });
    expect(words.join(' ')).not.toMatch(/even in time/);
  });
});

describe('two strings', () => {
  it.each(ALL)('of %s stand step under step, inside every width', (_, made) => {
    const now = invent(made);
    const other = invent({ ...made, late: {}, missed: [], wrong: [], extra: [], unsure: [] });
    for (const widthPx of [320, 358, 720, 1080]) {
      const rows = compareStrings(other, now, widthPx);
      expect(rows.flatMap((row) => row.names).length).toBeGreaterThanOrEqual(now.exercise.steps.length);
      for (const row of rows) {
        const hands = new Set(row.strings.map(({ hand }) => hand)).size;
        expect(row.strings).toHaveLength(2 * hands);
        for (const { pearls } of row.strings)
          for (const { x, y, radius } of pearls) {
            expect(x - radius).toBeGreaterThanOrEqual(0);
            expect(x + radius).toBeLessThanOrEqual(widthPx);
            expect(y + radius).toBeLessThanOrEqual(row.heightPx);
          }
        // No tie crosses the words that say whose a string is.
        for (const { labelY } of row.strings)
          for (const { y1, y2 } of row.ties)
            expect(labelY < Math.min(y1, y2) || labelY - 14 > Math.max(y1, y2)).toBe(true);
      }
    }
  });

  it('point out the steps that clearly changed their place', () => {
    const apart = compareStrings(better, late, 1080).flatMap((row) => row.ties.filter((tie) => tie.apart));
    expect(apart.length).toBeGreaterThan(0);
    expect(compareStrings(late, late, 1080).flatMap((row) => row.ties.filter((tie) => tie.apart))).toEqual(
      [],
    );
  });
});

describe('the best so far', () => {
  it('has the fewest mistakes, then is the most even', () => {
    const { report } = late;
    const even = (value: number) => ({
      report: { ...report, measures: { ...report.measures, evennessPercent: { value } } },
    });
    const [a, b, c] = [even(9), even(6), even(7)];
    expect(bestOf([a, b, c])).toBe(b);
    const wrong = { report: { ...b.report, missed: [{ step: 0, midi: 56, name: 'Ab3', hand: 'right' }] } };
    expect(faultCount(wrong.report as typeof report)).toBe(1);
    expect(bestOf([wrong as typeof a, a, c])).toBe(c);
    expect(bestOf([])).toBeNull();
  });

  it('is looked for among attempts of the same exercise and hands', () => {
    expect(sameExercise(late.report, better.report)).toBe(true);
    expect(sameExercise(late.report, invent(INVENTED.together).report)).toBe(false);
  });
});
