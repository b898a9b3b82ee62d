import type { Exercise } from '../../../src/engine/exercise/index.ts';
import type { Random } from '../random.ts';
import type { MistakeCounts } from './knobs.ts';

/** What goes wrong at one step. `note` is an index into the step's notes, `midi` a key as written (before any octave shift). */
export type Mistake =
  | { readonly kind: 'wrong'; readonly step: number; readonly note: number; readonly midi: number }
  | { readonly kind: 'missed'; readonly step: number; readonly note: number }
  | { readonly kind: 'slip'; readonly step: number; readonly note: number; readonly midi: number }
  | { readonly kind: 'repeat'; readonly step: number; readonly note: number }
  | { readonly kind: 'restart'; readonly step: number; readonly backTo: number };

/** Semitones by which a wrong key misses, as often as they stand here: mostly a semitone or a whole tone. */
const WRONG_BY = [-1, 1, -1, 1, -1, 1, -2, 2, -2, 2, -3, 3];
const SLIP_BY = [-1, 1, -1, 1, -2, 2];
/** Mistakes keep so far apart that nobody could argue about which is which. */
const STEPS_APART = 3;

/**
 * Draws places for the mistakes: away from the first and the last step, at least three steps from each other; a restart
 * goes back by one to three steps, never to the first two, which would be playing it all again. A wrong
 * or extra key is never one that the same or a neighbouring step asks for. Fewer are drawn where there is no room.
 */
export function drawMistakes(exercise: Exercise, counts: MistakeCounts, random: Random): readonly Mistake[] {
  const steps = exercise.steps;
  const taken: number[] = [];
  const drawStep = (from: number): number | null => {
    const free = steps
      .map((_, step) => step)
      .filter((step) => step >= from && step < steps.length - 1)
      .filter((step) => taken.every((other) => Math.abs(other - step) >= STEPS_APART));
    if (free.length === 0) return null;
    const step = random.pick(free);
    taken.push(step);
    return step;
  };
  const strange = (step: number, note: number, by: readonly number[]): number | null => {
    const near = [-1, 0, 1].flatMap((offset) => steps[step + offset]?.notes.map(({ midi }) => midi) ?? []);
    const midi = steps[step]!.notes[note]!.midi;
    const free = by.filter((semitones) => !near.includes(midi + semitones));
    return free.length === 0 ? null : midi + random.pick(free);
  };
  const mistakes: Mistake[] = [];
  const draw = (count: number, from: number, make: (step: number, note: number) => Mistake | null): void => {
    for (let index = 0; index < count; index++) {
      const step = drawStep(from);
      if (step === null) return;
      const mistake = make(step, random.integer(steps[step]!.notes.length));
      if (mistake) mistakes.push(mistake);
    }
  };
  draw(counts.restarts, 5, (step) => ({ kind: 'restart', step, backTo: step - 1 - random.integer(3) }));
  draw(counts.wrong, 1, (step, note) => {
    const midi = strange(step, note, WRONG_BY);
    return midi === null ? null : { kind: 'wrong', step, note, midi };
  });
  draw(counts.missed, 1, (step, note) => ({ kind: 'missed', step, note }));
  draw(counts.slips, 1, (step, note) => {
    const midi = strange(step, note, SLIP_BY);
    return midi === null ? null : { kind: 'slip', step, note, midi };
  });
  draw(counts.repeats, 1, (step, note) => ({ kind: 'repeat', step, note }));
  return mistakes.sort((a, b) => a.step - b.step);
}
