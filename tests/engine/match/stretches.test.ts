import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { PlayedNote } from '../../../src/engine/listen/index.ts';
import { exerciseStretches } from '../../../src/engine/match/index.ts';
import { momentsOf } from '../../../src/engine/match/recognise/moments.ts';
import { passagesOf } from '../../../src/engine/match/recognise/stretches.ts';
import { heardOf, played } from './simulated.ts';

const keysOf = (key: string, form: 'arpeggio' | 'scale'): readonly number[] =>
  buildExercise({ key, form, hands: 'right', octaves: 2 }).steps.flatMap(({ notes }) =>
    notes.map(({ midi }) => midi),
  );
const SCALE = keysOf('G major', 'scale');
const ARPEGGIO = keysOf('E major', 'arpeggio');
const STEP_SEC = 0.7;

const evenly = (keys: readonly number[], fromSec: number): PlayedNote[] =>
  keys.map((midi, at) => played(fromSec + STEP_SEC * at, midi));
/** When the last of so many notes is struck, s. */
const lastOf = (keys: readonly number[], fromSec: number): number => fromSec + STEP_SEC * (keys.length - 1);
const told = (notes: readonly PlayedNote[]): unknown =>
  exerciseStretches(heardOf(notes)).map(({ startSec, endSec }) => [
    expect.closeTo(startSec, 9),
    expect.closeTo(endSec, 9),
  ]);
const spans = (...pairs: readonly (readonly [number, number])[]): unknown =>
  pairs.map(([from, to]) => [from, to]);

describe('the stretches of a recording that exercises explain', () => {
  const end = lastOf(SCALE, 2);

  it('go from the first to the last note of each, in order, and leave out what is none', () => {
    // Chromatic clusters of neighbours, as nobody’s exercise: D sharp 7, E 7, C sharp 7 in turn.
    const other = (count: number, fromSec: number): PlayedNote[] =>
      evenly(
        Array.from({ length: count }, (_, at) => [99, 100, 97][at % 3]!),
        fromSec,
      );
    const first = 2 + 40 * STEP_SEC + 1;
    const second = lastOf(SCALE, first) + 3;
    const rest = lastOf(ARPEGGIO, second) + 3;
    const notes = [...other(40, 2), ...evenly(SCALE, first), ...evenly(ARPEGGIO, second), ...other(40, rest)];
    expect(spans([first, lastOf(SCALE, first)], [second, lastOf(ARPEGGIO, second)])).toEqual(told(notes));
  });

  it('begin with a first key that was struck twice within half a second, not with an earlier one', () => {
    const twice = (sec: number): unknown => told([played(2 - sec, SCALE[0]!), ...evenly(SCALE, 2)]);
    expect(spans([2 - 0.49, end])).toEqual(twice(0.49));
    expect(spans([2, end])).toEqual(twice(0.62));
  });

  it('end with a last key that was struck twice within half a second, or with a key caught with it', () => {
    const more = (sec: number, midi: number): unknown => told([...evenly(SCALE, 2), played(end + sec, midi)]);
    expect(spans([2, end + 0.49])).toEqual(more(0.49, SCALE[0]!));
    expect(spans([2, end])).toEqual(more(0.52, SCALE[0]!));
    expect(spans([2, end + 0.11])).toEqual(more(0.11, SCALE[0]! + 1));
    expect(spans([2, end])).toEqual(more(0.13, SCALE[0]! + 1));
  });

  it('that follow each other at once with the same key share none', () => {
    const times = [1, 1.4, 1.8, 2.2, 2.6, 3];
    const moments = momentsOf([60, 62, 64, 64, 62, 60].map((midi, at) => played(times[at]!, midi)));
    const both = [
      { from: 0, to: 2 },
      { from: 3, to: 5 },
    ];
    expect(passagesOf(both, moments)).toEqual([
      { startSec: 1, endSec: 1.8 },
      { startSec: 2.2, endSec: 3 },
    ]);
  });

  it('are none in silence', () => {
    expect(exerciseStretches(heardOf([]))).toEqual([]);
  });
});
