import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/engine/index.ts';
import { fixtureSound } from '../../browser/sounds.ts';
import { REPORT } from '../../../src/engine/report/index.ts';
import { descriptionsIn } from '../../support/descriptions.ts';
import { schemaFaults } from '../../support/report-schema.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';

describe('the published schema', () => {
  it('says what a field is in words of its own, or leaves it to its name', () => {
    const told = descriptionsIn(REPORT);
    expect(told.length).toBeGreaterThan(100);
    expect(told.filter((text) => !/\w+\W+\w+/.test(text))).toEqual([]);
  });

  it.each([
    'broken-triads',
    'clean-scale',
    'late-thumb',
    'left-hand',
    'missed-and-repeated',
    'natural-for-sharp',
    'progression',
    'restart',
  ])('holds for the report of %s, recognised from its sound', async (name) => {
    const told = assess(await fixtureSound(name), null);
    expect(told.kind).toBe('report');
    if (told.kind === 'report') expect(schemaFaults(told.report)).toEqual([]);
  });

  it.each(Object.entries(INVENTED))('holds for the invented attempt %s', (_, made) => {
    expect(schemaFaults(invent(made).report)).toEqual([]);
  });

  it.each([
    ['another version', { version: 2 }, /version/],
    ['notes without a time', { notes: [{ midi: 60 }] }, /timeSec/],
    ['an octave beyond any keyboard', { exercise: { octaveShift: 9 } }, /octaveShift/],
    ['a key that is none', { exercise: { key: 'H major' } }, /key/],
    [
      'a figure that is both measured and not',
      { measures: { npvi: { value: 1, notMeasured: 'no' } } },
      /npvi/,
    ],
  ])('refuses %s', (_, change, fault) => {
    const { report } = invent(INVENTED.lateThumb);
    const changed: Record<string, unknown> = { ...report };
    for (const [name, value] of Object.entries(change))
      changed[name] =
        typeof value === 'object' && !Array.isArray(value)
          ? { ...(changed[name] as object), ...value }
          : value;
    expect(schemaFaults(changed).join('\n')).toMatch(fault);
  });
});
