import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import {
  BUILDABLE,
  buildExercise,
  exerciseOf,
  exerciseTitle,
  passageId,
  practisedExercise,
  stepMs,
  stepsForHands,
} from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, Hands, OwnPassage } from '../../../src/engine/exercise/index.ts';
import { inventedPassages } from '../../support/passages.ts';

/** An upbeat and two bars of 3/4: a dotted line with fingers over fifths. */
const PASSAGE: OwnPassage = {
  title: 'The two bars before the end',
  bpm: 66,
  bars: [
    { beats: 1, count: 3, unit: 4 },
    { beats: 3, count: 3, unit: 4 },
    { beats: 3, count: 3, unit: 4 },
  ],
  notes: [
    { name: 'D4', hand: 'right', beat: 0, beats: 1, finger: 1 },
    { name: 'E4', hand: 'right', beat: 1, beats: 1.5, finger: 3 },
    { name: 'F4', hand: 'right', beat: 2.5, beats: 0.5, finger: 1 },
    { name: 'G4', hand: 'right', beat: 3, beats: 1, finger: 2 },
    { name: 'A4', hand: 'right', beat: 4, beats: 3 },
    { name: 'C3', hand: 'left', beat: 1, beats: 3 },
    { name: 'G3', hand: 'left', beat: 1, beats: 3 },
    { name: 'A4', hand: 'left', beat: 4, beats: 3 },
  ],
};
const CHOICE: ExerciseChoice = {
  key: 'C major',
  form: 'passage',
  hands: 'together',
  octaves: 1,
  passage: PASSAGE,
};

describe('a passage of one’s own', () => {
  it('has a step for each moment at which something begins, where it is written', () => {
    const { steps, title } = buildExercise(CHOICE);
    expect(title).toBe('The two bars before the end · hands together');
    expect(steps.map(({ beat }) => beat)).toEqual([0, 1, 2.5, 3, 4]);
    expect(steps.map(({ bar }) => bar)).toEqual([0, 1, 1, 1, 2]);
    expect(steps.map(({ notes }) => notes.map(({ name }) => name).join(' '))).toEqual([
      'D4',
      'C3 G3 E4',
      'F4',
      'G4',
      'A4',
    ]);
  });

  it('strikes a key that both hands have at one moment once', () => {
    expect(buildExercise(CHOICE).steps.at(-1)!.notes).toHaveLength(1);
  });

  it('gives each hand its own part', () => {
    const left = buildExercise({ ...CHOICE, hands: 'left' }).steps;
    expect(left.map(({ beat, bar }) => [beat, bar])).toEqual([
      [0, 1],
      [3, 2],
    ]);
    expect(buildExercise({ ...CHOICE, hands: 'right' }).steps).toHaveLength(5);
  });

  it('takes crossings from the fingers that are written, and none where they are left open', () => {
    const crossings = buildExercise(CHOICE).steps.map((step) => step.crossings);
    expect(crossings[2]).toEqual([{ hand: 'right', kind: 'thumb-under', direction: 'up' }]);
    expect(crossings.flat()).toHaveLength(1);
    const open = PASSAGE.notes.map(({ finger: _, ...note }) => note);
    const { steps } = buildExercise({ ...CHOICE, passage: { ...PASSAGE, notes: open } });
    expect(steps.flatMap((step) => step.crossings)).toEqual([]);
    expect(steps.flatMap(({ notes }) => notes.map(({ finger }) => finger))).toEqual(
      Array.from({ length: 7 }, () => null),
    );
  });

  it('is called by its title in every language', () => {
    const german = { language: 'de', naming: 'german' } as const;
    expect(exerciseTitle(CHOICE, german)).toBe('The two bars before the end · beide Hände');
    const untitled = { ...CHOICE, passage: { ...PASSAGE, title: ' ' } };
    expect(exerciseTitle(untitled, german)).toBe('eigene Stelle · beide Hände');
  });

  it('keeps its rhythm where a stretch of it is practised over and over', () => {
    const stretch = { fromStep: 1, toStep: 3 };
    const intention = { stretch, times: 2, rhythm: 'even' } as const;
    const { steps } = practisedExercise(CHOICE, { intention, repeats: 2 });
    const gaps = steps.slice(1).map(({ beat }, at) => beat - steps[at]!.beat);
    expect([gaps[0], gaps[1], gaps[3], gaps[4]]).toEqual([1.5, 0.5, 1.5, 0.5]);
  });

  it('finds the moments of a stretch among the steps of another hand', () => {
    const of = (fromStep: number, toStep: number, hands: Hands) =>
      stepsForHands(CHOICE, hands, { fromStep, toStep });
    expect(of(1, 4, 'left')).toEqual({ fromStep: 0, toStep: 1 });
    expect(of(2, 3, 'left')).toEqual({ fromStep: 0, toStep: 1 });
    expect(of(1, 3, 'right')).toEqual({ fromStep: 1, toStep: 3 });
    const left = { ...CHOICE, hands: 'left' } as const;
    expect(stepsForHands(left, 'together', { fromStep: 0, toStep: 1 })).toEqual({ fromStep: 1, toStep: 4 });
    for (const choice of inventedPassages(30).filter(({ hands }) => hands === 'together')) {
      const right = buildExercise({ ...choice, hands: 'right' }).steps.length;
      const all = buildExercise(choice).steps.length;
      const found = stepsForHands(choice, 'right', { fromStep: all - 2, toStep: all - 1 });
      expect(found.fromStep).toBeLessThan(found.toStep);
      expect(found.toStep).toBeLessThan(right);
    }
  });

  it('has the mean of its steps for the usual one', () => {
    expect(stepMs(CHOICE, 60)).toBe(1000);
  });

  it('is known by its notes, whatever its title, tempo and fingers', () => {
    const renamed = {
      ...PASSAGE,
      title: 'x',
      bpm: 90,
      notes: PASSAGE.notes.map(({ finger: _, ...one }) => one),
    };
    expect(passageId(renamed)).toBe(passageId(PASSAGE));
    const ids = inventedPassages(30).map(({ passage }) => passageId(passage!));
    expect(new Set(ids).size).toBe(30);
  });

  const refused: readonly (readonly [string, Partial<OwnPassage> | 'no passage', RegExp])[] = [
    ['is not there', 'no passage', /form=passage needs the passage itself/],
    [
      'has 17 bars',
      { bars: Array.from({ length: 17 }, () => ({ beats: 4, count: 4, unit: 4 as const })) },
      /bars=17 is too long/,
    ],
    ['has a single moment', { notes: [{ name: 'C4', hand: 'right', beat: 0, beats: 1 }] }, /fewer than two/],
    [
      'has nothing for one of the hands',
      { notes: PASSAGE.notes.filter(({ hand }) => hand === 'right') },
      /hands=together needs notes for both hands/,
    ],
    [
      'has notes beyond its last bar',
      { notes: [...PASSAGE.notes, { name: 'C4', hand: 'right', beat: 9, beats: 1 }] },
      /beat=9 lies beyond the last bar/,
    ],
    [
      'has notes beyond the keyboard',
      { notes: [...PASSAGE.notes, { name: 'C9', hand: 'right', beat: 4, beats: 1 }] },
      /name=C9 is no key/,
    ],
  ];
  for (const [name, part, why] of refused)
    it(`is refused where it ${name}`, () => {
      const { passage: _, ...without } = CHOICE;
      const choice = part === 'no passage' ? without : { ...CHOICE, passage: { ...PASSAGE, ...part } };
      expect(() => buildExercise(choice)).toThrow(why);
      expect(exerciseOf(choice)).toBeNull();
      expect(v.is(BUILDABLE, choice)).toBe(false);
    });

  it('goes with no other form', () => {
    expect(() => buildExercise({ ...CHOICE, form: 'scale' })).toThrow(/passage does not go with form=scale/);
  });
});
