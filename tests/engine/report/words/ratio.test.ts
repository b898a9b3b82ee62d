import { expect, it } from 'vitest';
import { practisedExercise } from '../../../../src/engine/exercise/index.ts';
import { ratioPlayed } from '../../../../src/engine/report/words/ratio.ts';
import type { Scene } from '../../../../src/engine/report/words/scene.ts';

const SCALE = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 } as const;

/** A scale's beginning, struck with these times from note to note, s, after it was to be long–short or otherwise. */
function ratio(rhythm: 'long-short' | 'short-long' | 'even', timesSec: readonly number[]) {
  const stretch = { fromStep: 0, toStep: timesSec.length };
  const practised = { intention: { stretch, times: 1, rhythm }, repeats: 1 };
  let timeSec = 1;
  const strikes = [0, ...timesSec].map((sec, step) => ({ step, timeSec: (timeSec += sec) }));
  const exercise = practisedExercise(SCALE, practised);
  return ratioPlayed({ measured: { strikes }, exercise } as unknown as Scene, practised);
}

const LONG_SHORT = [0.58, 0.18, 0.6, 0.2, 0.62, 0.22];

it('the ratio of long to short is that of the middle ones, its ± by how much either kind varies', () => {
  const { value, plusMinus } = ratio('long-short', LONG_SHORT)!;
  expect(value).toBeCloseTo(0.6 / 0.2, 9);
  // Either has an SD of 0.02 s in three: of 0.6 s a thirtieth, of 0.2 s a tenth, and the middle of three is π/9 of a single one's variance.
  expect(plusMinus).toBeCloseTo(3 * Math.sqrt((Math.PI / 9) * ((1 / 30) ** 2 + (1 / 10) ** 2)), 9);
});

it.each([
  ['into the first note of a copy, before which anybody breathes', 6],
  ['over a note that was not struck', 3],
])('leaves out the time %s', (_, without) => {
  // Two copies of six notes, every other interval 0.6 s; the breath lasts 3 s.
  const stretch = { fromStep: 0, toStep: 5 };
  const practised = { intention: { stretch, times: 2, rhythm: 'long-short' as const }, repeats: 2 };
  let timeSec = 1;
  const strikes = Array.from({ length: 12 }, (__, step) => {
    timeSec += step === 0 ? 0 : step === 6 ? 3 : step % 2 === 1 ? 0.6 : 0.2;
    return { step, timeSec };
  }).filter(({ step }) => without === 6 || step !== without);
  const exercise = practisedExercise(SCALE, practised);
  const found = ratioPlayed({ measured: { strikes }, exercise } as unknown as Scene, practised)!;
  expect(found.value).toBeCloseTo(3, 9);
  expect(found.plusMinus).toBeCloseTo(0, 9);
});

it('where short comes first it is turned', () => {
  expect(ratio('short-long', LONG_SHORT)!.value).toBeCloseTo(1 / 3, 9);
});

it('there is none where no step is to be longer, nor of a single way of a kind', () => {
  expect(ratio('even', LONG_SHORT)).toBeNull();
  expect(ratio('long-short', LONG_SHORT.slice(0, 3))).toBeNull();
});
