import { describe, expect, it } from 'vitest';
import {
  ALL_FORMS,
  ALL_KEYS,
  buildExercise,
  keyFacts,
  octaveCounts,
  practisedExercise,
} from '../../../src/engine/index.ts';
import type { ExerciseChoice, Intention } from '../../../src/engine/index.ts';
import {
  barWidthPx,
  breakSystems,
  headWidthPx,
  vexKeySignature,
  writeBars,
} from '../../../src/ui/plots/staff/bars.ts';
import { meantShapes } from '../../../src/ui/plots/staff/meant.ts';
import type { StaffPlace } from '../../../src/ui/plots/staff/pencil.ts';

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
const BEATS = { w: 4, h: 2, q: 1, 8: 1 / 2, 16: 1 / 4, 32: 1 / 8 } as const;

describe('bars', () => {
  it('of all exercises hold every note once, in both staves a key on which both hands lie, and the last note fills its bar', () => {
    for (const choice of choices) {
      const exercise = buildExercise(choice);
      const bars = writeBars(exercise);
      const events = bars.flatMap((bar) => bar.parts.flatMap((part) => part.events));
      const notes = exercise.steps.reduce((sum, step) => sum + step.notes.length, 0);
      const shared = exercise.steps.flatMap((step) =>
        step.notes.filter((note) => note.leftFinger !== undefined),
      );
      expect(events.reduce((sum, event) => sum + event.keys.length, 0)).toBe(notes + shared.length);
      if (choice.form.startsWith('broken')) continue;
      for (const bar of bars)
        for (const part of bar.parts) {
          const beats = part.events.reduce((sum, event) => {
            return sum + BEATS[event.duration] * (event.dots === 1 ? 1.5 : 1);
          }, 0);
          expect(beats).toBeCloseTo(4, 9);
        }
    }
  });

  it.each([
    [1, 'q', 4],
    [2, '8', 8],
    [3, '8', 12],
    [4, '16', 16],
    [6, '16', 12],
  ] as const)(
    'of a scale with %i notes a beat are of notes of value %s, %i to a bar',
    (notesABeat, value, inBar) => {
      const exercise = buildExercise({
        ...{ key: 'C major', form: 'scale', hands: 'right', octaves: 4, notesABeat },
      });
      const [first] = writeBars(exercise);
      expect(first!.parts[0]!.events.map(({ duration }) => duration)).toEqual(
        Array.from({ length: inBar }, () => value),
      );
    },
  );

  it.each([
    [3, 2, 'w', 0],
    [6, 1, 'q', 1],
  ] as const)(
    'end, with %i notes a beat, on a dotted note that fills the bar where one can',
    (notesABeat, octaves, value, beat) => {
      const exercise = buildExercise({
        ...{ key: 'C major', form: 'arpeggio', hands: 'right', octaves, notesABeat },
      });
      const last = writeBars(exercise).at(-1)!.parts[0]!.events.at(-1)!;
      expect(last).toMatchObject({ beat, dots: 1, duration: value });
    },
  );

  it('stay near their staff: never more than five ledger lines', () => {
    // Staff lines E4–F5 and G2–A3, one diatonic place each (common practice): five ledger lines are ten places.
    const LINES = { treble: [30, 38], bass: [18, 26] } as const;
    const far = choices.flatMap((choice) =>
      writeBars(buildExercise(choice)).flatMap(({ parts }) =>
        parts.flatMap(({ events }) =>
          events.flatMap(({ keys, clef }) => {
            const [lowest, highest] = LINES[clef];
            return keys
              .filter((key) => {
                const place = 'cdefgab'.indexOf(key[0]!) + 7 * Number(key.split('/')[1]);
                return place < lowest - 11 || place > highest + 11;
              })
              .map((key) => ({ choice, key, clef }));
          }),
        ),
      ),
    );
    expect(far).toEqual([]);
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

describe('what is meant, as a musician writes it', () => {
  const SCALE = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 } as const;
  const written = (intention: Intention, repeats = 1) => {
    const exercise = practisedExercise(SCALE, { intention, repeats });
    const meant = { fromStep: 0, toStep: exercise.steps.length - 1, intention };
    return writeBars(exercise, meant).flatMap(({ parts }) => parts[0]!.events);
  };
  const values = (intention: Intention) =>
    written(intention).map(({ duration, dots }) => duration + '.'.repeat(dots));
  const signs = (intention: Intention) => written(intention).map((event) => event.signs.join(' '));
  const STRETCH = { fromStep: 0, toStep: 4 };

  it.each([
    ['long–short', { rhythm: 'long-short' }, ['8.', '16', '8.', '16']],
    ['short–long', { rhythm: 'short-long' }, ['16', '8.', '16', '8.']],
    ['in twos, the first held', { rhythm: 'groups-of-2' }, ['q', '8', 'q', '8']],
    ['positions as chords', { rhythm: 'even', blocked: true }, ['q']],
  ] as const)('%s has its note values', (_, intention, expected) => {
    expect(values({ stretch: STRETCH, times: 1, ...intention }).slice(0, -1)).toEqual(expected);
  });

  it.each([
    ['staccato', { touch: 'staccato' }, ['staccato', 'staccato', 'staccato', 'staccato', 'staccato']],
    ['detached', { touch: 'detached' }, ['tenuto', 'tenuto', 'tenuto', 'tenuto', 'tenuto']],
    ['accents', { loudness: 'accents-of-2' }, ['accent', '', 'accent', '', 'accent']],
    ['held notes', { rhythm: 'groups-of-2' }, ['fermata', '', 'fermata', '', '']],
    ['a stop before the thumb', { rhythm: 'stop-before-crossings' }, ['', '', 'breath', '', '']],
  ] as const)('%s has its signs', (_, intention, expected) => {
    expect(signs({ stretch: STRETCH, times: 1, rhythm: 'even', ...intention })).toEqual(expected);
  });

  const place = (step: number, x: number): StaffPlace => ({
    step,
    hand: 'right',
    x,
    headsY: [40],
    topY: 20,
    bottomY: 60,
  });
  const shapes = (intention: Partial<Intention>, steps: readonly number[]) =>
    meantShapes(
      steps.map((step) => place(step, 10 * step)),
      { fromStep: 0, toStep: 10, intention: { times: 1, rhythm: 'even', ...intention } },
    );

  it('a slur over the notes, and a hairpin below that goes on from line to line', () => {
    expect(shapes({ touch: 'legato' }, [0, 5]).slurs).toHaveLength(1);
    const openings = [shapes({ loudness: 'growing' }, [0, 5]), shapes({ loudness: 'growing' }, [5, 10])].map(
      ({ hairpins }) => {
        const [upper = '', lower = ''] = hairpins[0]!.split('M').slice(1);
        const ys = (line: string) => line.split(/[L ]/).map(Number);
        return [ys(lower)[1]! - ys(upper)[1]!, ys(lower)[3]! - ys(upper)[3]!];
      },
    );
    expect(openings[0]![0]).toBe(0);
    expect(openings[0]![1]).toBe(openings[1]![0]);
    expect(openings[1]![1]).toBe(2 * openings[0]![1]!);
  });

  it('a letter at its beginning, and only there', () => {
    expect(shapes({ loudness: 'mf' }, [0, 5]).letters.map(({ text }) => text)).toEqual(['mf']);
    expect(shapes({ loudness: 'mf' }, [5, 10]).letters).toEqual([]);
  });
});
