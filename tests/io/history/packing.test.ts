import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allChoices } from '../../../src/engine/index.ts';
import { drawerOf } from '../../../src/io/history/drawers.ts';
import { ID_PATTERN, nameFor, timeIn, withEntry } from '../../../src/io/history/entry.ts';
import type { Entry } from '../../../src/io/history/index.ts';
import { packDrawer, unpackDrawer } from '../../../src/io/history/packing.ts';
import { summary } from '../../engine/standing/history.ts';

const anyTime = fc.integer({ min: 0, max: 4_000_000_000_000 });
const figure = fc.option(fc.integer({ min: -10_000, max: 100_000 }).map((value) => value / 100));
const choice = fc.constantFrom(...allChoices().slice(0, 40));
const anySummary = fc
  .tuple(
    choice,
    fc.record({
      targetBpm: figure,
      wrong: fc.nat(50),
      unsure: fc.nat(50),
      evennessPercent: figure,
      tempoBpm: figure,
      worstCrossingMs: figure,
      chordSpreadMs: figure,
      handsApartMs: figure,
      situation: fc.string(),
    }),
  )
  .map(([exercise, more]) => summary(exercise, more));
const anyEntry: fc.Arbitrary<Entry> = fc
  .record({
    whenMs: anyTime,
    state: fc.constantFrom('unanalysed', 'told', 'no-report'),
    name: fc.string(),
    remarks: fc.array(fc.string(), { maxLength: 3 }),
    device: fc.option(fc.string()),
    choice: fc.option(choice),
    targetBpm: figure,
    durationSec: fc.integer({ min: 0, max: 10_000 }).map((value) => value / 10),
    soundBytes: fc.nat(),
    reason: fc.string(),
    deletedMs: fc.option(anyTime),
    summary: fc.option(anySummary),
  })
  .map((made) => ({ id: nameFor(made.whenMs, 'abcd'), ...made }));

describe('a drawer', () => {
  it('gives back every entry that was put into it', () => {
    fc.assert(
      fc.property(fc.array(anyEntry, { maxLength: 20 }), (entries) => {
        expect(unpackDrawer(packDrawer(entries))).toEqual(entries);
      }),
    );
  });

  it('keeps what was meant with an attempt that was never told', () => {
    const [entry] = fc.sample(anyEntry, { numRuns: 1, seed: 1 });
    const intention = {
      stretch: { fromStep: 2, toStep: 6 },
      times: 3,
      rhythm: 'even',
      touch: 'legato',
    } as const;
    const some = [{ ...entry!, intention }, entry!];
    expect(unpackDrawer(packDrawer(some))).toEqual(some);
  });

  it('keeps what was to be practised and whether it was done, and reads rows without it', () => {
    const [entry] = fc.sample(anyEntry, { numRuns: 1, seed: 1 });
    const practised = { intention: { times: 3, rhythm: 'long-short' }, done: true } as const;
    const some = [
      { ...entry!, summary: summary(allChoices()[0]!, { practised }) },
      { ...entry!, summary: summary(allChoices()[0]!, { practised: { ...practised, done: false } }) },
      { ...entry!, summary: summary(allChoices()[0]!) },
    ];
    expect(unpackDrawer(packDrawer(some))).toEqual(some);
    expect(packDrawer([some[2]!])).not.toContain('intentions');
  });

  it('keeps touch and loudness, each with its ±, with and without a practice', () => {
    const [entry] = fc.sample(anyEntry, { numRuns: 1, seed: 1 });
    const [loudnessDb, overlapMs] = [
      { value: 2.31, plusMinus: 0.4 },
      { value: -41.5, plusMinus: 31.25 },
    ];
    const practised = { intention: { times: 3, rhythm: 'even' }, done: true } as const;
    const some = [{ loudnessDb }, { overlapMs }, { loudnessDb, overlapMs, practised }].map((more) => ({
      ...entry!,
      summary: summary(allChoices()[0]!, more),
    }));
    expect(unpackDrawer(packDrawer(some))).toEqual(some);
  });

  it('rounds figures to hundredths', () => {
    const [entry] = fc.sample(anyEntry, { numRuns: 1, seed: 1 });
    const made = { ...entry!, summary: summary(allChoices()[0]!, { evennessPercent: 9.4249 }) };
    expect(unpackDrawer(packDrawer([made]))[0]!.summary!.evennessPercent).toBe(9.42);
  });

  it('has an entry that was put in again as it is now', () => {
    const [first, second] = fc.sample(anyEntry, { numRuns: 2, seed: 3 });
    const [one, other] = [
      { ...first!, id: nameFor(5, 'abcd') },
      { ...second!, id: nameFor(9, 'abcd') },
    ];
    const entries = [one, other, { ...one, name: 'again' }].reduce<readonly Entry[]>(withEntry, []);
    expect(entries.map(({ name }) => name)).toEqual(['again', other.name]);
  });

  it('stays in order of names, and has each name once', () => {
    fc.assert(
      fc.property(fc.array(anyEntry, { maxLength: 30 }), (entries) => {
        const kept = entries.reduce<readonly Entry[]>(withEntry, []);
        expect(kept.map(({ id }) => id)).toEqual([...new Set(entries.map(({ id }) => id))].sort());
      }),
    );
  });
});

describe('a name', () => {
  it('sorts by its time, tells it, and leads to one drawer', () => {
    fc.assert(
      fc.property(anyTime, anyTime, (a, b) => {
        const [one, other] = [nameFor(a, 'abcd'), nameFor(b, 'abcd')];
        expect(one < other).toBe(a < b);
        expect(timeIn(one)).toBe(a);
        expect(one).toMatch(ID_PATTERN);
        if (Math.abs(a - b) > 30 * 86_400_000) expect(drawerOf(one)).not.toBe(drawerOf(other));
      }),
    );
  });
});
