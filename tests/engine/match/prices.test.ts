import { describe, expect, it } from 'vitest';
import type { PlayedNote } from '../../../src/engine/listen/index.ts';
import { COSTS, costAtEnd, FOLLOWING } from '../../../src/engine/match/costs/index.ts';
import { follow } from '../../../src/engine/match/recognise/follow.ts';
import { momentsOf } from '../../../src/engine/match/recognise/moments.ts';
import type { Template } from '../../../src/engine/match/recognise/templates.ts';
import { played } from './simulated.ts';

// What an account of playing costs, event by event, added up by hand: the sums stand in the table beside what was played.

type Steps = readonly (readonly number[])[];

/** Eight single keys, no two within reach of one another's mistakes. */
const LINE: Steps = [40, 45, 50, 55, 60, 65, 70, 75].map((key) => [key]);
/** Six chords of three keys; in each the third is no octave of the first. */
const CHORDS: Steps = Array.from({ length: 6 }, (_, step) => [30, 34, 37].map((key) => key + 9 * step));
/** Six octaves. */
const OCTAVES: Steps = Array.from({ length: 6 }, (_, step) => [30 + 9 * step, 42 + 9 * step]);
const FOREIGN = 107;
const STEP_SEC = 0.7;

function templateOf(steps: Steps): Template {
  const midis = steps.flat();
  return {
    choice: { key: 'C major', form: 'triads', hands: 'right', octaves: 1 },
    steps,
    keys: [...new Set(midis)],
    times: [...new Set(midis)].map(() => 1),
    size: midis.length,
    lowest: Math.min(...midis),
    highest: Math.max(...midis),
  };
}

/** What is struck at once, one after the other; numbers alone move the time on by so many seconds more. */
type Playing = readonly (readonly number[] | number)[];

function notesOf(playing: Playing): PlayedNote[] {
  let timeSec = 1;
  return playing.flatMap((keys) => {
    if (typeof keys === 'number') {
      timeSec += keys;
      return [];
    }
    const notes = keys.map((midi) => played(timeSec, midi));
    timeSec += STEP_SEC;
    return notes;
  });
}

function accountOf(steps: Steps, notes: readonly PlayedNote[]) {
  const moments = momentsOf(notes);
  return follow(moments, [{ template: templateOf(steps), semitones: 0, from: 0, to: moments.length }]);
}

/** Some steps of an exercise, `from` up to `to`. */
const some = (steps: Steps, from: number, to = steps.length - 1): Steps => steps.slice(from, to + 1);
/** The steps of an exercise with one of them played otherwise. */
const but = (steps: Steps, step: number, keys: readonly number[]): Steps =>
  steps.map((own, at) => (at === step ? keys : own));

const BEGIN = FOLLOWING.begin;

describe('a line', () => {
  it.each<[string, Playing, number]>([
    ['as written', LINE, BEGIN],
    ['one step left out', [...some(LINE, 0, 2), ...some(LINE, 4)], BEGIN + COSTS.missed],
    ['two in a row left out', [...some(LINE, 0, 2), ...some(LINE, 5)], BEGIN + 2 * COSTS.missed],
    ['the first left out', some(LINE, 1), BEGIN + COSTS.missed],
    ['the first two left out', some(LINE, 2), BEGIN + 2 * COSTS.missed],
    ['the last two left out', some(LINE, 0, 5), BEGIN + 2 * COSTS.missedAtEnds],
    ['a key three semitones off', but(LINE, 3, [58]), BEGIN + COSTS.wrong],
    ['a key three semitones off downwards', but(LINE, 3, [52]), BEGIN + COSTS.wrong],
    [
      'a key further off: a missed and an extra one',
      but(LINE, 3, [FOREIGN]),
      BEGIN + COSTS.missed + COSTS.extra,
    ],
    ['a foreign key between', [...some(LINE, 0, 3), [FOREIGN], ...some(LINE, 4)], BEGIN + COSTS.extra],
    ['a key struck twice', [...some(LINE, 0, 3), [55], ...some(LINE, 4)], BEGIN + FOLLOWING.repeated],
    [
      'two steps back',
      [...some(LINE, 0, 5), ...some(LINE, 3)],
      BEGIN + COSTS.goingBack + 2 * FOLLOWING.goingBackFar,
    ],
    [
      'back to the second step from the fourth, a wrong start',
      [...some(LINE, 0, 3), ...some(LINE, 1)],
      BEGIN + COSTS.goingBack + 2 * FOLLOWING.goingBackFar,
    ],
    [
      'two steps back from the last',
      [...LINE, ...some(LINE, 5)],
      BEGIN + COSTS.goingBack + 2 * FOLLOWING.goingBackFar,
    ],
    ['a stop', [...some(LINE, 0, 3), 2, ...some(LINE, 4)], BEGIN + FOLLOWING.pause],
    ['twice, with a pause between', [...LINE, 0.7, ...LINE], 2 * BEGIN],
    [
      'after two foreign keys and a pause',
      [[FOREIGN], [FOREIGN - 1], 0.7, ...LINE],
      BEGIN + 2 * FOLLOWING.idle,
    ],
    ['nothing of it', [[FOREIGN], [FOREIGN - 1], [FOREIGN]], 3 * FOLLOWING.idle],
  ])('%s', (_, playing, cost) => {
    expect(accountOf(LINE, notesOf(playing)).cost).toBeCloseTo(cost, 9);
  });

  /** Two pieces of playing, the second so long after the last note of the first, s; steps half a second apart. */
  const after = (first: Steps, pauseSec: number, second: Steps): PlayedNote[] => {
    const inTime = (keys: readonly number[], at: number, fromSec: number): PlayedNote[] =>
      keys.map((midi) => played(fromSec + 0.5 * at, midi));
    const begin = 1 + 0.5 * (first.length - 1) + pauseSec;
    return [
      ...first.flatMap((keys, at) => inTime(keys, at, 1)),
      ...second.flatMap((keys, at) => inTime(keys, at, begin)),
    ];
  };

  it('again straight on costs a little more than after a pause, and is two playings', () => {
    const straightOn = accountOf(LINE, after(LINE, 0.59, LINE));
    expect(straightOn.cost).toBeCloseTo(2 * BEGIN + FOLLOWING.again, 9);
    expect(straightOn.stretches.map(({ from, to }) => [from, to])).toEqual([
      [0, 7],
      [8, 15],
    ]);
    expect(accountOf(LINE, after(LINE, 0.61, LINE)).cost).toBeCloseTo(2 * BEGIN, 9);
  });

  it('cut out of other playing costs more than parted from it, before and after', () => {
    const foreign: Steps = [[FOREIGN], [FOREIGN - 1]];
    for (const [sec, more] of [
      [0.59, FOLLOWING.abrupt],
      [0.61, 0],
    ] as const) {
      const cost = BEGIN + 2 * FOLLOWING.idle + more;
      expect(accountOf(LINE, after(foreign, sec, LINE)).cost).toBeCloseTo(cost, 9);
      expect(accountOf(LINE, after(LINE, sec, foreign)).cost).toBeCloseTo(cost, 9);
    }
  });

  it('is over at a pause of more than eight seconds: what comes then is none of it', () => {
    const first = some(LINE, 0, 4);
    const rest = some(LINE, 5);
    expect(accountOf(LINE, after(first, 7.9, rest)).cost).toBeCloseTo(BEGIN + FOLLOWING.pause, 9);
    const over = accountOf(LINE, after(first, 8.1, rest));
    expect(over.cost).toBeCloseTo(BEGIN + 3 * COSTS.missedAtEnds + 3 * FOLLOWING.idle, 9);
    expect(over.stretches).toMatchObject([{ from: 0, to: 4, step: 4 }]);
  });

  it('broken off in its middle is no exercise, a step later it is', () => {
    expect(accountOf(LINE, notesOf(some(LINE, 0, 3))).stretches).toEqual([]);
    expect(accountOf(LINE, notesOf(some(LINE, 0, 4))).stretches).toMatchObject([{ step: 4 }]);
  });

  it('counts a finding that is doubted as much less as it is doubted', () => {
    const notes = [...notesOf(LINE), played(1 + 3.5 * STEP_SEC, FOREIGN, { confidence: 0.525 })];
    notes.sort((a, b) => a.timeSec - b.timeSec);
    expect(accountOf(LINE, notes).cost).toBeCloseTo(BEGIN + COSTS.extra / 2, 9);
  });

  it('stands at its step after the last note, at the cost so far', () => {
    const { standing } = accountOf(LINE, notesOf([...some(LINE, 0, 1), [FOREIGN], ...some(LINE, 2, 4)]));
    expect(standing[0]).toMatchObject({ step: 4, from: 0, cost: expect.closeTo(BEGIN + COSTS.extra, 9) });
  });
});

it('what is left out at an end is one event, however much: dearer only with more keys a step', () => {
  expect(costAtEnd(5, 1)).toBeLessThan(costAtEnd(10, 1));
  expect(costAtEnd(40, 1)).toBe(costAtEnd(400, 1));
  expect(costAtEnd(400, 3)).toBe(costAtEnd(4000, 3));
  expect(costAtEnd(400, 3)).toBeCloseTo(2 * costAtEnd(400, 1), 12);
});

describe('chords', () => {
  const [low, middle, high] = CHORDS[3]!;
  it.each<[string, Playing, number]>([
    ['as written', CHORDS, BEGIN],
    ['a chord left out', [...some(CHORDS, 0, 1), ...some(CHORDS, 3)], BEGIN + 3 * COSTS.missed],
    ['the last left out', some(CHORDS, 0, 4), BEGIN + 3 * COSTS.missedAtEnds],
    ['a key left out', but(CHORDS, 3, [low!, high!]), BEGIN + COSTS.missed],
    ['a neighbour in a key’s place', but(CHORDS, 3, [low!, middle! + 1, high!]), BEGIN + COSTS.wrong],
    ['a neighbour caught with it', but(CHORDS, 3, [low!, middle!, high!, high! + 2]), BEGIN + COSTS.slip],
    ['a key an octave over one', but(CHORDS, 3, [low!, middle!, high!, low! + 12]), BEGIN + COSTS.ghost],
    ['a key a twelfth over one', but(CHORDS, 3, [low!, middle!, high!, low! + 19]), BEGIN + COSTS.ghost],
    ['a key two octaves over one', but(CHORDS, 3, [low!, middle!, high!, low! + 24]), BEGIN + COSTS.ghost],
    ['another key with it', but(CHORDS, 3, [low!, middle!, high!, FOREIGN]), BEGIN + COSTS.extra],
    [
      'one key of three right, the others near: another chord',
      but(CHORDS, 3, [low!, middle! + 2, high! + 3]),
      BEGIN + 2 * COSTS.wrong + 3 * FOLLOWING.anotherChord,
    ],
    [
      'no key right: the chord left out, the keys extra',
      but(CHORDS, 3, [FOREIGN, FOREIGN - 1]),
      BEGIN + 3 * COSTS.missed + 2 * COSTS.extra,
    ],
    [
      'struck again',
      [...some(CHORDS, 0, 3), CHORDS[3]!, ...some(CHORDS, 4)],
      BEGIN + FOLLOWING.repeated + 2 * FOLLOWING.repeatedToo,
    ],
    [
      'two steps back from the fifth',
      [...some(CHORDS, 0, 4), ...some(CHORDS, 2)],
      BEGIN + COSTS.goingBack + 2 * COSTS.goingBackToo + 2 * FOLLOWING.goingBackFar,
    ],
    [
      'a step back from the second: a wrong start costs the price for each key',
      [...some(CHORDS, 0, 1), ...CHORDS],
      BEGIN + Math.min(3 * COSTS.goingBack + FOLLOWING.goingBackFar, 2 * 3 * FOLLOWING.idle),
    ],
  ])('%s', (_, playing, cost) => {
    expect(accountOf(CHORDS, notesOf(playing)).cost).toBeCloseTo(cost, 9);
  });

  it('whose upper key is covered by its octave lack it at less', () => {
    const [, upper] = OCTAVES[2]!;
    const [lower] = OCTAVES[2]!;
    expect(accountOf(OCTAVES, notesOf(but(OCTAVES, 2, [lower!]))).cost).toBeCloseTo(BEGIN + COSTS.covered, 9);
    expect(accountOf(OCTAVES, notesOf(but(OCTAVES, 2, [upper!]))).cost).toBeCloseTo(BEGIN + COSTS.missed, 9);
  });

  it.each([
    ['struck as one', 0.05, 0],
    ['struck a little apart', 0.1, FOLLOWING.brokenChord],
    ['struck at the edge of it', 0.24, FOLLOWING.brokenChord],
  ])('%s', (_, apartSec, more) => {
    const notes = CHORDS.flatMap((keys, step) =>
      keys.map((midi, at) => played(1 + STEP_SEC * step + (step === 3 && at > 0 ? apartSec : 0), midi)),
    );
    expect(accountOf(CHORDS, notes).cost).toBeCloseTo(BEGIN + more, 9);
  });
});
