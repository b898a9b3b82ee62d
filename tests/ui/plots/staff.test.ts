import { describe, expect, it } from 'vitest';
import { ALL_FORMS, ALL_KEYS, buildExercise, keyFacts, octaveCounts } from '../../../src/engine/index.ts';
import type { ExerciseChoice } from '../../../src/engine/index.ts';
import {
  barWidthPx,
  breakSystems,
  headWidthPx,
  vexKeySignature,
  writeBars,
} from '../../../src/ui/plots/staff/bars.ts';

const choices: readonly ExerciseChoice[] = ALL_KEYS.flatMap((key) =>
  ALL_FORMS.flatMap((form) =>
    (['left', 'right', 'together'] as const).map((hands) => ({
      key,
      form,
      hands,
      octaves: octaveCounts(form).length,
    })),
  ),
);

/** A quarter is one beat (common practice, no source); in broken triads the beat is a dotted quarter of three eighths. */
const BEATS = { w: 4, h: 2, q: 1, 8: 1 / 2, 16: 1 / 4 } as const;

describe('bars', () => {
  it('of all exercises hold every note once, and the last note fills its bar', () => {
    for (const choice of choices) {
      const exercise = buildExercise(choice);
      const bars = writeBars(exercise);
      const events = bars.flatMap((bar) => bar.parts.flatMap((part) => part.events));
      const notes = exercise.steps.reduce((sum, step) => sum + step.notes.length, 0);
      expect(events.reduce((sum, event) => sum + event.keys.length, 0)).toBe(notes);
      if (choice.form === 'broken-triads') continue;
      for (const bar of bars)
        for (const part of bar.parts) {
          const beats = part.events.reduce((sum, event) => {
            return sum + BEATS[event.duration] * (event.dots === 1 ? 1.5 : 1);
          }, 0);
          expect(beats).toBeCloseTo(4, 9);
        }
    }
  });

  it('stay near their staff: never more than five ledger lines', () => {
    // Staff lines E4–F5 and G2–A3, one diatonic place each (common practice): five ledger lines are ten places.
    const LINES = { treble: [30, 38], bass: [18, 26] } as const;
    for (const choice of choices)
      for (const bar of writeBars(buildExercise(choice)))
        for (const part of bar.parts)
          for (const event of part.events)
            for (const key of event.keys) {
              const place = 'cdefgab'.indexOf(key[0]!) + 7 * Number(key.split('/')[1]);
              const [lowest, highest] = LINES[event.clef];
              expect(place).toBeGreaterThanOrEqual(lowest - 11);
              expect(place).toBeLessThanOrEqual(highest + 11);
            }
  });

  it('are spread over systems that fit, none lost', () => {
    const bars = writeBars(buildExercise(choices[0]!));
    for (const widthPx of [300, 420, 720, 1080]) {
      const systems = breakSystems(bars, widthPx, 7);
      expect(systems.flat()).toEqual(bars);
      for (const system of systems)
        if (system.length > 1)
          expect(headWidthPx(7) + system.length * Math.max(...system.map(barWidthPx))).toBeLessThanOrEqual(
            widthPx,
          );
    }
  });
});

it.each([
  ['F# minor', 'F#m'],
  ['Ab major', 'Ab'],
])('%s has VexFlow’s key signature %s', (key, spec) => {
  expect(vexKeySignature(key)).toBe(spec);
  expect(keyFacts(key).signature.length).toBeGreaterThan(2);
});
