import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/engine/assess.ts';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { Form, Hand } from '../../../src/engine/exercise/index.ts';
import { listenAndKeep } from '../../../src/engine/listen/index.ts';
import type { Heard } from '../../../src/engine/listen/index.ts';
import { alignAt } from '../../../src/engine/match/align/index.ts';
import { recheck } from '../../../src/engine/recheck/index.ts';
import { createRandom } from '../../support/random.ts';
import { NO_MISTAKES, render, renderPerformance } from '../../support/render.ts';
import type { Keystroke } from '../../support/render.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import { perform } from '../../support/student/perform.ts';

/**
 * A tidy attempt at the development piano with each keystroke `lateSec` later, Infinity for never → what every note is called that
 * is not called right.
 */
async function notRight(
  form: Form,
  lateSec: (stroke: Keystroke, at: number) => number,
): Promise<readonly string[]> {
  const exercise = { key: 'D major', form, hands: 'together', octaves: 1 } as const;
  const written = buildExercise(exercise);
  const student = { ...STUDENT_DEFAULTS, bpm: 60 };
  const tidy = perform(written, student, createRandom(7));
  const strokes = tidy.strokes
    .map((stroke) => {
      const chord = written.steps[stroke.step!]!.notes.filter((note) => note.hand === stroke.hand);
      const late = lateSec(stroke, chord.map(({ midi }) => midi).indexOf(stroke.midi));
      return { ...stroke, timeSec: stroke.timeSec + late, releaseSec: stroke.releaseSec + late };
    })
    .filter(({ timeSec }) => timeSec < Infinity)
    .sort((a, b) => a.timeSec - b.timeSec);
  const sound = await renderPerformance(
    { ...tidy, strokes, durationSec: tidy.durationSec + 1 },
    { seed: 3, piano: 'dev', exercise },
  );
  const assessment = assess(sound, exercise);
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  return assessment.alignment.matched
    .filter(({ verdict }) => verdict !== 'correct')
    .map(({ verdict, step, expected }) => `${verdict} ${step} ${expected.hand} ${expected.name}`);
}

describe('a second listening to hands that are apart', () => {
  it.each<[string, Form, number]>([
    ['half a step', 'arpeggio', 0.25],
    ['half a step', 'progression', 0.5],
    ['a whole step', 'arpeggio', 0.5],
    ['a whole step', 'progression', 1],
  ])('the left %s late in the %s: every note stays right', async (_, form, late) => {
    expect(await notRight(form, ({ hand }) => (hand === 'left' ? late : 0))).toEqual([]);
  });

  it('chords rolled over 400 ms: at most one note in thirty is in doubt', async () => {
    expect((await notRight('progression', (_, at) => 0.2 * at)).length).toBeLessThanOrEqual(1);
  });

  it('a hand that does not play is not made up', async () => {
    const silent = await notRight('progression', ({ hand }) => (hand === 'right' ? Infinity : 0));
    expect(silent.filter((note) => note.includes('right'))).toHaveLength(15);
  });
});

describe('both hands read an octave too low, since the first ear lost the upper one', () => {
  it('are found where they lie: the lower hand sounds, and most of the upper is heard on the second listening', async () => {
    const exercise = { key: 'D major', form: 'arpeggio', hands: 'together', octaves: 1 } as const;
    const sound = await render({ seed: 6, piano: 'dev', exercise, student: { mistakes: NO_MISTAKES } });
    const { heard, sound: kept } = listenAndKeep(sound);
    const struck = (hand: Hand): readonly number[] =>
      sound.truth.notes.flatMap((note) => (note.hand === hand ? [note.midi] : []));
    const ofLeft = ({ midi }: { readonly midi: number }): boolean => struck('left').includes(midi);
    const lost: Heard = {
      ...heard,
      notes: heard.notes.filter(ofLeft),
      candidates: heard.candidates!.filter(ofLeft),
    };
    const tooLow = alignAt(lost, buildExercise(exercise), { left: -1, right: -1, semitones: 0 });
    const { matched, octaveShift } = recheck(lost, tooLow, kept).alignment;
    expect(octaveShift).toBe(0);
    const right = (hand: Hand): readonly number[] =>
      matched.flatMap(({ expected, verdict }) =>
        expected.hand === hand && verdict === 'correct' ? [expected.midi] : [],
      );
    expect(right('left')).toEqual(struck('left'));
    expect(right('right').length).toBeGreaterThan(struck('right').length / 2);
  });
});

it('a right hand that plays by itself, where both were chosen, stays where it is written', async () => {
  const exercise = { key: 'D major', form: 'arpeggio', hands: 'together', octaves: 1 } as const;
  const sound = await render({ seed: 3, piano: 'dev', exercise: { ...exercise, hands: 'right' } });
  const assessment = assess(sound, exercise, { asChosen: true });
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  const { matched, octaveShift } = assessment.alignment;
  expect(octaveShift).toBe(0);
  expect(matched.flatMap(({ expected, verdict }) => (verdict === 'correct' ? [expected.hand] : []))).toEqual(
    sound.truth.notes.map(() => 'right'),
  );
});
