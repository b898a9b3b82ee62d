import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { handsHeard } from '../../../src/engine/recheck/hands.ts';
import { heardOf, played } from '../match/simulated.ts';

const BOTH: ExerciseChoice = { key: 'C major', form: 'arpeggio', hands: 'together', octaves: 2 };

/** What is made of both hands where the closer look says so of each written note; null: it was not asked. */
function heard(left: (step: number) => number | null, right: (step: number) => number | null) {
  const notes = buildExercise(BOTH).steps.flatMap(({ beat, notes }) =>
    notes.map(({ midi }) => played(1 + beat, midi)),
  );
  const alignment = matchNotes(heardOf(notes), buildExercise(BOTH));
  const odds = alignment.matched.map(({ step, expected }) => (expected.hand === 'left' ? left : right)(step));
  return handsHeard(alignment, odds);
}

const sure = (): number => 10;
const oneIn =
  (every: number, is: number, else_: number) =>
  (step: number): number =>
    step % every === 0 ? is : else_;

describe('whether a hand plays is one question for the whole attempt', () => {
  it.each([
    ['clearly heard everywhere', sure, 'there'],
    ['heard at one step in three, so so at the others', oneIn(3, 6, 2), 'there'],
    ['heard in the first half, not struck in the second', (step: number) => (step < 7 ? 7 : -5), 'there'],
    ['leaning towards struck everywhere, surely nowhere', () => 2, 'unknown'],
    ['as one that is not there sounds, everywhere', () => 1, 'not-there'],
    ['as low as it gets everywhere', () => -8, 'not-there'],
    ['never asked about: what is usual counts', () => null, 'there'],
    ['heard at one step in six, so so at the others', oneIn(6, 4, 2), 'there'],
    ['heard at one step in six, not at the others', oneIn(6, 4, 1), 'unknown'],
  ] as const)('the right hand %s', (_, right, presence) => {
    expect(heard(sure, right).right.presence).toBe(presence);
    expect(heard(sure, right).left.presence).toBe('there');
  });

  it('a note that sounds surer never speaks against its hand', () => {
    const order = ['not-there', 'unknown', 'there'];
    const found = Array.from({ length: 12 }, (_, step) => heard(sure, oneIn(3, step, 1)).right.presence);
    const places = found.map((presence) => order.indexOf(presence));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(new Set(found).size).toBeGreaterThan(1);
  });
});

describe('whether a note was left out is judged by its hand’s other notes', () => {
  const clear = heard(sure, oneIn(2, 9, 11)).right.leftOut;
  const soft = heard(sure, oneIn(2, 1.5, 5)).right.leftOut;

  it.each([-4, -3, -2, -1, 0])('log odds of %d say more of a hand that is clearly heard', (logOdds) => {
    expect(clear(logOdds)).toBeGreaterThan(soft(logOdds));
  });

  it('far below a clear hand it was left out; below a soft one that cannot be told; where the others lie it was struck', () => {
    expect(clear(-4)).toBeGreaterThan(0.9);
    expect(soft(-2)).toBeLessThan(0.5);
    expect(clear(8)).toBeLessThan(0.01);
    expect(soft(3)).toBeLessThan(0.01);
  });

  it('the lower the likelier', () => {
    const likely = Array.from({ length: 20 }, (_, index) => clear(10 - index));
    expect(likely).toEqual(likely.toSorted((a, b) => a - b));
  });
});
