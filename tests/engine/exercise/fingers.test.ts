import { describe, expect, it } from 'vitest';
import { UsageError } from '../../../src/engine/base/errors.ts';
import {
  allChoices,
  buildExercise,
  exerciseOf,
  keepFingering,
  principlesFor,
  withKeptFingers,
  withPrinciple,
  writeFinger,
} from '../../../src/engine/exercise/index.ts';
import type { Exercise, ExerciseChoice, Hand, Principle } from '../../../src/engine/exercise/index.ts';

const handOf = ({ steps }: Exercise, hand: Hand) =>
  steps.flatMap(({ notes }) => notes.filter((note) => note.hand === hand));
const fingersOf = (choice: ExerciseChoice): string =>
  buildExercise(choice)
    .steps.flatMap(({ notes }) => notes.map(({ finger }) => finger))
    .join('');
const crossingsOf = (choice: ExerciseChoice): string =>
  buildExercise(choice)
    .steps.flatMap(({ notes, crossings }) => crossings.map(({ kind }) => `${notes[0]!.name} ${kind}`))
    .join(', ');

/** Every hand alone and every principle that it can choose. */
const VARIANTS = allChoices()
  .filter(({ octaves }) => octaves === 2)
  .flatMap((choice) => (['left', 'right'] as const).map((hands) => ({ ...choice, hands })))
  .flatMap((choice) =>
    principlesFor(choice, choice.hands).map(({ principle, source }) => ({ choice, principle, source })),
  );

describe('fingers by another principle', () => {
  // From memory unless the row's own source is named in `variants.ts`; common practice, no source.
  it.each<readonly [string, ExerciseChoice['form'], Hand, Principle, string]>([
    ['Bb major', 'scale', 'right', 'fourth-first', '4123123412312343213214321321' + '4'],
    ['Eb major', 'scale', 'right', 'second-first', '21234123123412321432132143212'],
    ['Ab major', 'scale', 'left', 'thumbs-together', '32132143213214341231234123123'],
    ['Bb major', 'scale', 'left', 'thumbs-together', '21321432132143234123123412312'],
    ['C minor', 'scale', 'left', 'thumbs-together', '43214321321432123412312341234'],
    ['Db major', 'arpeggio', 'right', 'second-first', '2124124214212'],
    ['Db major', 'arpeggio', 'right', 'as-in-c', '1231235321321'],
    ['Bb major', 'arpeggio', 'right', 'fourth-first', '4124124214214'],
    ['C minor', 'arpeggio', 'left', 'third-finger', '5321321231235'],
    ['D major', 'arpeggio', 'left', 'fourth-finger', '5421421241245'],
  ])('of %s %s, %s hand, %s', (key, form, hands, principle, fingers) => {
    expect(fingersOf(withPrinciple({ key, form, hands, octaves: 2 }, hands, principle))).toBe(fingers);
  });

  it('are there for every key and form that teachers name: flat scales, arpeggios from black keys, c minor', () => {
    const offered = (key: string, form: ExerciseChoice['form'], hand: Hand): readonly Principle[] =>
      principlesFor({ key, form, octaves: 2 }, hand).map(({ principle }) => principle);
    for (const key of ['Bb major', 'Eb major', 'Ab major', 'Db major']) {
      expect(offered(key, 'scale', 'right').length, key).toBeGreaterThan(0);
      expect(offered(key, 'scale', 'left').length, key).toBeGreaterThan(0);
      expect(offered(key, 'arpeggio', 'right').length, key).toBeGreaterThan(0);
      expect(offered(key, 'arpeggio', 'left').length, key).toBeGreaterThan(0);
    }
    for (const key of ['F# minor', 'C# minor', 'G# minor', 'Db major', 'Ab major', 'Eb major'])
      expect(offered(key, 'arpeggio', 'right'), key).toContain('second-first');
    expect(offered('C minor', 'arpeggio', 'left')).toEqual(['third-finger']);
    expect(offered('C minor', 'scale', 'left')).toEqual(['thumbs-together']);
    expect(offered('E major', 'arpeggio-first-inversion', 'right')).toEqual(['second-first']);
  });

  it('are some hundred, each complete, 1 to 5, never one finger twice in a row on two keys but over an octave’s seam', () => {
    expect(VARIANTS.length).toBeGreaterThan(100);
    for (const { choice, principle } of VARIANTS) {
      const named = JSON.stringify({ ...choice, principle });
      const notes = handOf(buildExercise(withPrinciple(choice, choice.hands, principle)), choice.hands);
      const usual = handOf(buildExercise(choice), choice.hands);
      expect(
        notes.map(({ midi }) => midi),
        named,
      ).toEqual(usual.map(({ midi }) => midi));
      for (const [at, { finger, midi }] of notes.entries()) {
        expect(finger, named).toBeGreaterThanOrEqual(1);
        expect(finger, named).toBeLessThanOrEqual(5);
        const next = notes[at + 1];
        if (next !== undefined) expect(next.midi === midi || next.finger !== finger, named).toBe(true);
      }
    }
  });

  it('keep the hand whole: between two crossings the fingers keep the order of the keys', () => {
    for (const { choice, principle } of VARIANTS) {
      const named = JSON.stringify({ ...choice, principle });
      const { steps } = buildExercise(withPrinciple(choice, choice.hands, principle));
      for (const [at, step] of steps.entries()) {
        const before = steps[at - 1]?.notes[0];
        const note = step.notes[0]!;
        if (before === undefined || step.crossings.length > 0) continue;
        const outward = note.midi > before.midi === (choice.hands === 'right');
        expect(Math.sign(note.finger! - before.finger!), named).toBe(outward ? 1 : -1);
      }
    }
  });

  it('put both thumbs down together where that is the principle', () => {
    for (const { choice } of VARIANTS.filter(({ principle }) => principle === 'thumbs-together')) {
      const { steps } = buildExercise(
        withPrinciple({ ...choice, hands: 'together', form: 'scale' }, 'left', 'thumbs-together'),
      );
      const alone = steps
        .slice(7, 14)
        .filter(({ notes: [left, right] }) => (left!.finger === 1) !== (right!.finger === 1));
      expect(alone, choice.key).toEqual([]);
    }
  });

  it('move the crossings with them', () => {
    const choice: ExerciseChoice = { key: 'Ab major', form: 'scale', hands: 'left', octaves: 1 };
    expect(crossingsOf(choice)).toBe('Db3 over-thumb, Ab3 over-thumb, G3 thumb-under, C3 thumb-under');
    expect(crossingsOf(withPrinciple(choice, 'left', 'thumbs-together'))).toBe(
      'Db3 over-thumb, G3 over-thumb, F3 thumb-under, C3 thumb-under',
    );
  });

  it('are as usual where nothing is said, and of a hand that does not play say nothing', () => {
    const right = buildExercise({
      ...{ key: 'Ab major', form: 'scale', hands: 'right', octaves: 2 },
      fingering: { left: 'thumbs-together' },
    });
    expect(right.choice).not.toHaveProperty('fingering');
  });

  it.each<readonly [ExerciseChoice, RegExp]>([
    [
      { key: 'C major', form: 'scale', hands: 'right', octaves: 1, fingering: { right: 'second-first' } },
      /fingering\.right=second-first.*only the usual/,
    ],
    [
      { key: 'Ab major', form: 'scale', hands: 'left', octaves: 1, fingering: { left: 'second-first' } },
      /use thumbs-together, as-in-c/,
    ],
    [
      {
        ...{ key: 'C major', form: 'scale', hands: 'right', octaves: 1 },
        fingering: { written: [{ hand: 'right', step: 99, fromBottom: 0, finger: 1 }] },
      },
      /step=99.*no note/,
    ],
  ])('are refused where they are none', (choice, message) => {
    expect(() => buildExercise(choice)).toThrow(UsageError);
    expect(() => buildExercise(choice)).toThrow(message);
    expect(exerciseOf(choice)).toBeNull();
  });
});

describe('a finger written over a note', () => {
  const choice: ExerciseChoice = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 };

  it('takes the usual one’s place there alone, and the crossing goes where the thumb goes', () => {
    const four = [1, 2, 3, 4, 1].reduce(
      (now, finger, step) => writeFinger(now, { hand: 'right', step, fromBottom: 0 }, finger),
      choice,
    );
    expect(fingersOf(four).slice(0, 8)).toBe('12341345');
    expect(crossingsOf(choice)).toBe('F4 thumb-under, E4 over-thumb');
    expect(crossingsOf(four)).toBe('G4 thumb-under, E4 over-thumb');
  });

  it('is taken back by itself', () => {
    const place = { hand: 'right', step: 3, fromBottom: 0 } as const;
    expect(writeFinger(writeFinger(choice, place, 4), place, null)).toEqual(choice);
  });

  it('reaches each key of a chord, and the left hand’s own where both lie on one key', () => {
    const chord = writeFinger({ ...choice, form: 'triads' }, { hand: 'right', step: 1, fromBottom: 1 }, 3);
    expect(buildExercise(chord).steps[1]!.notes.map(({ finger }) => finger)).toEqual([1, 3, 5]);
    const shared = writeFinger(
      { ...choice, form: 'contrary-motion', hands: 'together' },
      { hand: 'left', step: 0, fromBottom: 0 },
      2,
    );
    expect(buildExercise(shared).steps[0]!.notes).toMatchObject([{ finger: 1, leftFinger: 2 }]);
  });
});

describe('a finger written into a passage of one’s own', () => {
  const passage: ExerciseChoice = {
    ...{ key: 'C major', form: 'passage', hands: 'together', octaves: 1 },
    passage: {
      title: '',
      bars: [{ beats: 4, count: 4, unit: 4 }],
      notes: [
        { name: 'C4', hand: 'right', beat: 1, beats: 1 },
        { name: 'E4', hand: 'right', beat: 2, beats: 1, finger: 3 },
        { name: 'G4', hand: 'right', beat: 2, beats: 1 },
        { name: 'C3', hand: 'left', beat: 1, beats: 3 },
      ],
    },
  };

  it('is the note’s own, whichever hands play, and left open again', () => {
    const place = { hand: 'right', step: 1, fromBottom: 0 } as const;
    const written = writeFinger({ ...passage, hands: 'right' }, place, 2);
    expect(written.passage!.notes.map(({ finger }) => finger ?? 0)).toEqual([0, 2, 0, 0]);
    const open = writeFinger(written, place, null);
    expect(open.passage!.notes[1]).not.toHaveProperty('finger');
    const left = writeFinger(passage, { hand: 'left', step: 0, fromBottom: 0 }, 5);
    expect(left.passage!.notes[3]!.finger).toBe(5);
    expect(() => writeFinger(passage, { hand: 'left', step: 1, fromBottom: 0 }, 5)).toThrow(/no note/);
  });
});

describe('kept fingers', () => {
  const scale: ExerciseChoice = { key: 'Ab major', form: 'scale', hands: 'together', octaves: 2 };
  const kept = keepFingering([], withPrinciple(scale, 'left', 'thumbs-together'));

  it('are those of the same exercise at any length, and of the hands that play', () => {
    expect(withKeptFingers({ ...scale, octaves: 4 }, kept).fingering).toEqual({ left: 'thumbs-together' });
    expect(withKeptFingers({ ...scale, hands: 'left' }, kept).fingering).toEqual({ left: 'thumbs-together' });
    expect(withKeptFingers({ ...scale, hands: 'right' }, kept)).not.toHaveProperty('fingering');
    expect(withKeptFingers({ ...scale, key: 'Eb major' }, kept)).not.toHaveProperty('fingering');
  });

  it('give way to what the choice says itself', () => {
    const own = withPrinciple(scale, 'right', 'second-first');
    expect(withKeptFingers(own, kept)).toBe(own);
  });

  it('are kept hand by hand, and taken back where a hand has none', () => {
    const both = keepFingering(kept, withPrinciple({ ...scale, hands: 'right' }, 'right', 'second-first'));
    expect(withKeptFingers(scale, both).fingering).toEqual({
      left: 'thumbs-together',
      right: 'second-first',
    });
    const one = keepFingering(both, { ...scale, hands: 'left' });
    expect(withKeptFingers(scale, one).fingering).toEqual({ right: 'second-first' });
  });

  it('written over single notes count at the same length only', () => {
    const written = keepFingering([], writeFinger(scale, { hand: 'right', step: 2, fromBottom: 0 }, 2));
    expect(withKeptFingers(scale, written).fingering?.written).toHaveLength(1);
    expect(withKeptFingers({ ...scale, octaves: 1 }, written)).not.toHaveProperty('fingering');
  });
});
