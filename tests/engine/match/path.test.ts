import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import { indexedNotes, placesOf } from '../../../src/engine/match/align/notes.ts';
import { cheapestPath } from '../../../src/engine/match/align/path.ts';
import { heardOf, played } from './simulated.ts';

const SCALE = buildExercise({ key: 'C major', form: 'scale', hands: 'right', octaves: 1 });
const KEYS = SCALE.steps.map(({ notes }) => notes[0]!.midi);
const STEP_SEC = 0.5;

/** How many notes are answered of a scale whose last one comes after a wait, of so many steps, and is heard with this confidence. */
function answered(waitSteps: number, confidence: number): number {
  const notes = KEYS.map((midi, at) => {
    const last = at === KEYS.length - 1;
    return played(1 + STEP_SEC * (last ? at - 1 + waitSteps : at), midi, {
      confidence: last ? confidence : 1,
    });
  });
  const beatSec = STEP_SEC / (SCALE.steps[1]!.beat - SCALE.steps[0]!.beat);
  return cheapestPath(indexedNotes(heardOf(notes), 0), SCALE, placesOf(SCALE), () => beatSec).length;
}

describe('a pause', () => {
  // Left out at the end the note costs 0.35, and as an extra one 1.3 by its weight: (0.525 − 0.3) / 0.45 = ½ of it, 1.0 in all, and at
  // a confidence of 0.4, 0.64. A pause costs 0.35 ln² of its steps, 0.17 for two, 0.68 for four, and never more than 0.7.
  it.each([
    [1, 0.4, 'in time', 15],
    [2, 0.4, 'hardly late', 15],
    [4, 0.4, 'for more than the note weighs', 14],
    [4, 0.525, 'for less than the note weighs', 15],
    [40, 0.525, 'for no more, however long', 15],
  ])('of %i steps before a last note heard with confidence %f: %s', (waitSteps, confidence, _, notes) => {
    expect(answered(waitSteps, confidence)).toBe(notes);
  });
});
