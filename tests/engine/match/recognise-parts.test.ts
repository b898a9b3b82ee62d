import { describe, expect, it } from 'vitest';
import { COSTS, FOLLOWING } from '../../../src/engine/match/costs/index.ts';
import { momentsOf } from '../../../src/engine/match/recognise/moments.ts';
import type { Moment } from '../../../src/engine/match/recognise/moments.ts';
import { confidenceOf, rank } from '../../../src/engine/match/recognise/rank.ts';
import type { Ranking } from '../../../src/engine/match/recognise/rank.ts';
import { StepCosts } from '../../../src/engine/match/recognise/step-costs.ts';
import type { Slid, Template } from '../../../src/engine/match/recognise/templates.ts';
import { played } from './simulated.ts';

/** An exercise of these steps, as it is recognised by. */
function slid(steps: readonly (readonly number[])[]): Slid {
  const midis = steps.flat();
  const template: Template = {
    choice: { key: 'C major', form: 'triads', hands: 'right', octaves: 1 },
    steps,
    keys: [...new Set(midis)],
    times: [...new Set(midis)].map(() => 1),
    size: midis.length,
    lowest: Math.min(...midis),
    highest: Math.max(...midis),
  };
  return { template, semitones: 0 };
}

it('the keys of a moment come lowest first, whichever was struck first', () => {
  const struck = [64, 60, 67].map((midi, at) => played(1 + 0.01 * at, midi));
  expect(momentsOf(struck).map(({ keys }) => keys)).toEqual([[60, 64, 67]]);
});

it('a moment may be one chord with the one before where little time parts them, the first with none', () => {
  // Keys of three chords broken by 0.1 s, the chords 1 s apart.
  const struck = [0, 0.1, 0.2, 1, 1.1, 1.2, 2, 2.1, 2.2].map((sec, at) => played(1 + sec, 60 + at));
  const close = [false, true, true];
  expect(momentsOf(struck).map((moment) => moment.close)).toEqual([...close, ...close, ...close]);
});

describe('a pause among moments', () => {
  const pausedAt = (gapsSec: readonly number[]): number[] => {
    let timeSec = 1;
    const notes = [played(timeSec, 60), ...gapsSec.map((gap, at) => played((timeSec += gap), 61 + at))];
    return momentsOf(notes).flatMap(({ paused }, at) => (paused ? [at] : []));
  };
  const quick = [0.25, 0.25, 0.25, 0.25];
  const slow = [0.5, 0.5, 0.5, 0.5];

  it('is longer than twice the middle one of four on either side and itself', () => {
    expect(pausedAt([...slow, 1.1, ...quick])).toEqual([5]);
    expect(pausedAt([...quick, 1.1, ...slow])).toEqual([5]);
  });

  it('is none where one side alone is quick', () => {
    expect(pausedAt([...slow, 0.8, ...quick])).toEqual([]);
    expect(pausedAt([...quick, 0.8, ...slow])).toEqual([]);
  });
});

describe('how sure a reading is', () => {
  /** One reading with faults of that cost, of notes that cost `idle` if they are no exercise. */
  const reading = (cost: number, idle: number): number => {
    const stretch = { runner: slid([[60]]), from: 0, to: -1, step: 0, cost };
    const account = { stretches: [stretch], cost: cost + 1.5, standing: [] };
    const listed = { ...slid([[60]]), from: 0, to: 1, share: 1 };
    return confidenceOf({ moments: [], ranked: [{ listed, account }], idle } as unknown as Ranking);
  };

  it('is surer without a fault the more notes it explains: to begin an exercise costs something', () => {
    expect(reading(0, 2)).toBeLessThan(reading(0, 3));
    expect(reading(0, 3)).toBeLessThan(reading(0, 12));
  });

  it('is held against what the notes would cost if they were none, doubted ones the less', () => {
    const notes = [60, 62, 64].map((midi, at) => played(1 + at, midi));
    expect(rank({ notes }).idle).toBeCloseTo(3 * FOLLOWING.idle, 12);
    expect(rank({ notes: [...notes, played(5, 65, { confidence: 0.525 })] }).idle).toBeCloseTo(
      3.5 * FOLLOWING.idle,
      12,
    );
  });

  it('has the odds of the model: at half the strain e to the 6.6 − 10.4/2 − 2.8/4 + 0.72 · 4', () => {
    // Faults of 4.5 and 1.5 for the beginning are half of 12; no rival is as good as a lead of 4.
    const odds = Math.exp(6.6 - 5.2 - 0.7 + 2.88);
    expect(reading(4.5, 12)).toBeCloseTo(odds / (1 + odds), 9);
  });

  it('falls with the faults, and no further than where they outweigh the notes', () => {
    expect(reading(3, 12)).toBeLessThan(reading(1, 12));
    expect(reading(12, 12)).toBeCloseTo(reading(24, 12), 12);
  });
});

describe('a chord that lacks a note', () => {
  const struck = (...keys: readonly number[]): Moment => ({
    timeSec: 1,
    lastSec: 1,
    keys,
    close: false,
    paused: false,
    weights: keys.map(() => 1),
  });
  const costs = new StepCosts(slid([[60, 62, 67]]));

  it('has it missing, though a neighbour that is itself wanted was struck', () => {
    expect(costs.match(struck(60, 67), 0)).toBe(COSTS.missed);
  });

  it('has a neighbour in its place once: the next one that lacks is missing', () => {
    const wide = new StepCosts(slid([[60, 64, 66, 72]]));
    expect(wide.match(struck(60, 65, 72), 0)).toBe(COSTS.wrong + COSTS.missed);
  });

  it('has the nearer of two strangers in its place: the other is too much', () => {
    const fifth = new StepCosts(slid([[60, 67]]));
    expect(fifth.match(struck(61, 63, 67), 0)).toBe(COSTS.wrong + COSTS.extra);
    expect(fifth.match(struck(57, 59, 67), 0)).toBe(COSTS.wrong + COSTS.extra);
  });

  it('has no stranger in its place that lies further off', () => {
    expect(costs.match(struck(62, 67, 80), 0)).toBe(COSTS.missed + COSTS.extra);
  });
});
