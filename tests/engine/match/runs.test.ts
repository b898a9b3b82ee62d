import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { Answer } from '../../../src/engine/match/align/path.ts';
import { runsOf } from '../../../src/engine/match/align/runs.ts';
import { placesOf } from '../../../src/engine/match/align/notes.ts';

const PLACES = placesOf(buildExercise({ key: 'C major', form: 'scale', hands: 'right', octaves: 1 }));
const LAST = PLACES.length - 1;
const upTo = (from: number, to: number): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, at) => from + at);

/** Legs by their steps, struck one after the other: each begins where the player goes back. */
function answersOf(...legs: readonly (readonly number[])[]): readonly Answer[] {
  let struck = 0;
  return legs.flatMap((steps, leg) =>
    steps.map((step): Answer => ({ struck: struck++, leg, place: PLACES[step]! })),
  );
}
/** Runs as the struck notes that answer, by step. */
const told = (...legs: readonly (readonly number[])[]) =>
  runsOf(answersOf(...legs), LAST).map(({ answers, again, goingsBack }) => ({
    answers: answers.map(({ place, struck }) => [place.step, struck]),
    again,
    goingsBack,
  }));
const straight = (steps: readonly number[], firstStruck = 0) => ({
  answers: steps.map((step, at) => [step, firstStruck + at]),
  again: [],
  goingsBack: [],
});

describe('playings of an exercise', () => {
  it('are one where nobody goes back, and none where nothing answers', () => {
    expect(told(upTo(0, LAST))).toEqual([straight(upTo(0, LAST))]);
    expect(told()).toEqual([]);
  });

  it('are two where the player goes back to the top, from anywhere', () => {
    expect(told(upTo(0, 4), upTo(0, LAST))).toEqual([straight(upTo(0, 4)), straight(upTo(0, LAST), 5)]);
    expect(told(upTo(0, 1), upTo(0, 2))).toEqual([straight(upTo(0, 1)), straight(upTo(0, 2), 2)]);
  });

  it('are two where the player goes back at all after the last step, however far', () => {
    expect(told(upTo(0, LAST), upTo(5, 8))).toEqual([
      straight(upTo(0, LAST)),
      straight(upTo(5, 8), LAST + 1),
    ]);
  });

  it('are one where the last note is struck again: that is no way back', () => {
    const [run, ...others] = told(upTo(0, LAST), [LAST]);
    expect(others).toEqual([]);
    expect(run).toMatchObject({
      again: [{ struck: LAST + 1, kind: 'repeat', step: LAST }],
      goingsBack: [],
    });
    expect(run!.answers).toHaveLength(LAST + 1);
  });

  it('are one where the first note is struck again before anything else', () => {
    expect(told([0], upTo(0, 3))).toEqual([
      {
        answers: [
          [0, 0],
          [1, 2],
          [2, 3],
          [3, 4],
        ],
        again: [{ struck: 1, kind: 'repeat', step: 0 }],
        goingsBack: [],
      },
    ]);
  });

  it('have the first playing of each step where the player goes back a little, and tell where', () => {
    expect(told(upTo(0, 5), upTo(3, 8))).toEqual([
      {
        answers: [...upTo(0, 5).map((step) => [step, step]), [6, 9], [7, 10], [8, 11]],
        again: [
          { struck: 6, kind: 'restart', step: 3 },
          { struck: 7, kind: 'restart', step: 4 },
          { struck: 8, kind: 'restart', step: 5 },
        ],
        goingsBack: [{ atStep: 5, backToStep: 3 }],
      },
    ]);
  });

  it('tell each way back of several, by where the player last stood', () => {
    const [run, ...others] = told(upTo(0, 5), upTo(2, 3), upTo(1, 7));
    expect(others).toEqual([]);
    expect(run!.goingsBack).toEqual([
      { atStep: 5, backToStep: 2 },
      { atStep: 3, backToStep: 1 },
    ]);
    expect(run!.again.map(({ struck }) => struck)).toEqual([6, 7, 8, 9, 10, 11, 12]);
    expect(run!.answers.map(([step]) => step)).toEqual(upTo(0, 7));
  });

  it('count as over only in the playing that came to the last step', () => {
    const runs = told(upTo(0, LAST), upTo(0, 4), upTo(2, 6));
    expect(runs).toHaveLength(2);
    expect(runs[1]!.goingsBack).toEqual([{ atStep: 4, backToStep: 2 }]);
  });
});
