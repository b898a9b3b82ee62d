import { describe, expect, it } from 'vitest';
import { fitHelp } from '../../src/terminal/help.ts';
import { HELPS } from '../../src/terminal/language/index.ts';

const helps = Object.entries(HELPS).flatMap(([language, all]) =>
  Object.entries(all).map(([about, text]) => ({ name: `${about} (${language})`, text })),
);
const wordsOf = (text: string): readonly string[] => text.trim().split(/\s+/);

describe('a help fits the terminal', () => {
  it.each(helps)('$name, with all its words, at 60, 80 and 120 columns', ({ text }) => {
    for (const columns of [60, 80, 120]) {
      const fitted = fitHelp(text, { columns, unicode: true });
      for (const line of fitted.split('\n')) expect([...line].length).toBeLessThanOrEqual(columns);
      expect(wordsOf(fitted)).toEqual(wordsOf(text));
    }
  });

  it('what fits stays as it is written; what an option does stays beside its name', () => {
    const help = [
      'Says what was played, and how evenly.',
      'Short.',
      '',
      '      --key KEY    a key',
      '      --form FORM  arpeggio, triads, broken-triads or',
      '                   another one',
      '  -q               none',
    ].join('\n');
    expect(fitHelp(help, { columns: 80, unicode: true })).toBe(help);
    expect(fitHelp(help, { columns: 40, unicode: true }).split('\n')).toEqual([
      'Says what was played, and how evenly.',
      'Short.',
      '',
      '      --key KEY    a key',
      '      --form FORM  arpeggio, triads,',
      '                   broken-triads or',
      '                   another one',
      '  -q               none',
    ]);
    expect(fitHelp('  -q   Töne', { columns: 40, unicode: false })).toBe('  -q   Toene');
  });
});
