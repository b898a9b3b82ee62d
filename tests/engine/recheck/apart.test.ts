import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/engine/assess.ts';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { Form } from '../../../src/engine/exercise/index.ts';
import { createRandom } from '../../support/random.ts';
import { renderPerformance } from '../../support/render.ts';
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
