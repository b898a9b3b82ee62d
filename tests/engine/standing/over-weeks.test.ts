import { describe, expect, it } from 'vitest';
import { recurringFaults } from '../../../src/engine/index.ts';
import type { ExerciseChoice, Report } from '../../../src/engine/index.ts';
import { createRandom, type Random } from '../../support/random.ts';
import { tell } from '../report/words/scenes.ts';
import { DAY_MS, NOW_MS } from './history.ts';

const KEYS = ['F major', 'Bb major', 'Eb major', 'Ab major', 'Db major', 'G major', 'D major'];
const of = (key: string): ExerciseChoice => ({ key, form: 'scale', hands: 'right', octaves: 2 });
/** Scales of two octaves, every note right and even, as the report tells them. */
const RIGHT: readonly Report[] = KEYS.map((key) => tell({ choice: of(key) }));
const STEPS = RIGHT[0]!.notes.length;

interface Played {
  readonly missed?: readonly number[];
  readonly late?: readonly number[];
}

/** The report of an attempt that missed the notes of these steps, and came late to those. */
function withFaults(right: Report, { missed = [], late = [] }: Played): Report {
  return {
    ...right,
    notes: right.notes.filter(({ step }) => !missed.includes(step!)),
    missed: missed.map((step) => {
      const { midi, name } = right.notes.find((note) => note.step === step)!;
      return { step, midi, name, hand: 'right' };
    }),
    measures: {
      ...right.measures,
      intervals: right.measures.intervals.map((one) =>
        late.includes(one.step) ? { ...one, deviationMs: 0.5 * one.ioiMs, audible: true } : one,
      ),
    },
  };
}

const journal = (attempts: number, play: (attempt: number) => Played) =>
  recurringFaults(
    Array.from({ length: attempts }, (_, attempt) => ({
      id: String(attempt),
      whenMs: NOW_MS + attempt * DAY_MS,
      report: withFaults(RIGHT[attempt % RIGHT.length]!, play(attempt)),
    })),
  );

/** So many different steps, anywhere. */
function anywhere(random: Random, most: number): readonly number[] {
  return [...new Set(Array.from({ length: random.integer(most + 1) }, () => 1 + random.integer(STEPS - 1)))];
}

const stepsOfDegree = (key: string, degree: number): readonly number[] => {
  const right = RIGHT[KEYS.indexOf(key)]!;
  const letter = 'CDEFGAB'[('CDEFGAB'.indexOf(key[0]!) + degree - 1) % 7]!;
  return right.notes.flatMap(({ name, step }) => (name.startsWith(letter) ? [step!] : []));
};

describe('the same fault over weeks', () => {
  it('is found in no more than one innocent journal in twenty', () => {
    const random = createRandom(3);
    const journals = Array.from({ length: 120 }, () =>
      journal(20, () => ({ missed: anywhere(random, 4), late: anywhere(random, 5) })),
    );
    const told = journals.filter((found) => found.length > 0);
    expect(told.length / journals.length).toBeLessThanOrEqual(0.05);
  });

  it('is found where one degree is missed in two of three attempts, whatever the key', () => {
    const random = createRandom(5);
    const found = Array.from({ length: 60 }, () =>
      journal(20, (attempt) => {
        const own = stepsOfDegree(KEYS[attempt % KEYS.length]!, 7);
        const hit = random.chance(2 / 3) ? [random.pick(own)] : [];
        return { missed: [...new Set([...hit, ...anywhere(random, 1)])] };
      }),
    );
    const right = found.filter(([first]) => first?.place === 'degree-7' && first.kind === 'note');
    expect(right.length / found.length).toBeGreaterThanOrEqual(0.95);
    const [[first]] = right as [[(typeof right)[0][0]]];
    expect(first).toMatchObject({ hands: 'right', of: 20, ofKeys: 7 });
    expect(first!.attempts.length).toBeGreaterThanOrEqual(3);
    expect(first!.keys).toBeGreaterThan(2);
  });

  it('is found where the note after a crossing comes late', () => {
    const crossings = (at: number): readonly number[] =>
      RIGHT[at % RIGHT.length]!.measures.crossings.filter(({ direction }) => direction === 'up').map(
        ({ step }) => step,
      );
    const found = journal(16, (attempt) => ({ late: crossings(attempt).slice(0, 1 + (attempt % 2)) }));
    expect(found[0]).toMatchObject({ kind: 'late', place: 'crossing-up', of: 16 });
    expect(found[0]!.attempts).toHaveLength(16);
  });

  it('tells what practice did to it only where the halves are surely not alike', () => {
    const degree = (attempt: number) => [stepsOfDegree(KEYS[attempt % KEYS.length]!, 7)[0]!];
    const better = journal(20, (attempt) => (attempt < 10 ? { missed: degree(attempt) } : {}));
    expect(better.find(({ place }) => place === 'degree-7')!.then).toEqual({
      before: 10,
      ofBefore: 10,
      since: 0,
      ofSince: 10,
    });
    const same = journal(20, (attempt) => ({ missed: degree(attempt) }));
    expect(same.find(({ place }) => place === 'degree-7')!.then).toBeNull();
  });

  it('is surely another in one half by Fisher’s exact test, both ways looked at: five of ten against none, not four', () => {
    // One way: C(10, 5) / C(20, 5) = 252 / 15 504, twice 0.033. C(10, 4) / C(20, 4) = 210 / 4845, twice 0.087.
    const missedIn = (first: number) =>
      journal(20, (attempt) =>
        attempt < first ? { missed: [stepsOfDegree(KEYS[attempt % KEYS.length]!, 7)[0]!] } : {},
      ).find(({ place }) => place === 'degree-7')!;
    expect(missedIn(5).then).toEqual({ before: 5, ofBefore: 10, since: 0, ofSince: 10 });
    expect(missedIn(4).then).toBeNull();
  });

  it('is looked for in whole exercises of the set alone', () => {
    const told = (report: (right: Report) => Report) =>
      recurringFaults(
        Array.from({ length: 8 }, (_, attempt) => ({
          id: String(attempt),
          whenMs: NOW_MS + attempt * DAY_MS,
          report: report(withFaults(RIGHT[0]!, { missed: [stepsOfDegree('F major', 7)[0]!] })),
        })),
      ).length;
    const intention = { times: 1, rhythm: 'long-short' } as const;
    expect(told((right) => right)).toBeGreaterThan(0);
    expect(told((right) => ({ ...right, practised: { intention, repeats: 1 } }))).toBe(0);
  });

  it('is nothing in few attempts, or none', () => {
    expect(recurringFaults([])).toEqual([]);
    expect(journal(2, (attempt) => ({ missed: [stepsOfDegree(KEYS[attempt]!, 7)[0]!] }))).toEqual([]);
  });
});
