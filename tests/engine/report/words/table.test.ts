import { describe, expect, it } from 'vitest';
import { SITUATIONS } from '../../../../src/engine/report/words/index.ts';
import { ROWS, told } from './rows.ts';

describe('the table of situations', () => {
  it.each(ROWS.map((row) => [row.situation, row.verdict, row] as const))('%s: “%s”', (_, __, row) => {
    const { words } = told(row);
    expect(words).toMatchObject({
      situation: row.situation,
      verdict: row.verdict,
      nextStep: row.nextStep,
    });
  });

  it.each(ROWS.map((row) => [row.verdict, row] as const))(
    'underlines a part of what it says: “%s”',
    (_, row) => {
      const { words } = told(row);
      expect(words.verdict).toContain(words.emphasis);
    },
  );

  it.each(ROWS.map((row) => [row.verdict, row] as const))('keeps its tone: “%s”', (_, row) => {
    const { verdict, nextStep } = told(row).words;
    for (const text of [verdict, nextStep]) {
      expect(text).toMatch(/[.?]$/);
      expect(text).not.toMatch(/!|\.\.|#|\bundefined\b|NaN| {2}/);
      expect(text.length).toBeLessThan(190);
    }
    expect(verdict).toMatch(/^[A-Z0-9]/);
  });

  it('has a row here for every situation, or a test of its own below', () => {
    const own = [
      'restarted',
      'started-late',
      'hands-apart',
      'nearly-even',
      'nothing-to-remark',
      'not-sure',
      'practised',
      'loudness-shaped',
      'accented-in-groups',
      'pedal-held',
      'slows-to-the-end',
      'broad-last-note',
    ];
    const tested = new Set([...ROWS.map((row) => row.situation), ...own]);
    expect(SITUATIONS.filter((name) => !tested.has(name))).toEqual([]);
  });
});
