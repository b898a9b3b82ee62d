import { describe, expect, it } from 'vitest';
import { RULES, SITUATIONS } from '../../../../src/engine/report/words/index.ts';
import { ROWS, told } from './rows.ts';

/** Of these each step is a fault; the others are one, wherever it shows. */
const EACH_BY_ITSELF: readonly string[] = [
  'same-place-again',
  'leading-note',
  'signature',
  'landed-off',
  'inner-note',
  'wrong-notes',
  'missed-notes',
  'slips',
  'repeats',
  'hands-apart-for-now',
  'crossing-late-both-ways',
  'crossing-late-one-direction',
  'crossing-late',
  'late-note',
];

describe('the table of situations', () => {
  it.each(ROWS.map((row) => [row.situation, row.verdict, row] as const))('%s: “%s”', (_, __, row) => {
    const { words } = told(row);
    expect(words).toMatchObject({
      situation: row.situation,
      verdict: row.verdict,
      nextStep: row.nextStep,
      steps: row.steps ?? [],
    });
  });

  it.each(
    ROWS.flatMap((row) =>
      told(row).words.said!.statements.map((one) => [row.verdict, one.situation, one] as const),
    ),
  )('“%s” counts %s as one thing, or as many as it marks', (_, situation, { faults, steps }) => {
    const { kind } = RULES[situation];
    expect(faults).toBe(
      kind !== 'fault' ? 0 : EACH_BY_ITSELF.includes(situation) ? Math.max(1, steps.length) : 1,
    );
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
