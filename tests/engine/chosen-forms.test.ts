import { describe, expect, it } from 'vitest';
import { assess } from '../../src/engine/assess.ts';
import type { ExerciseChoice, Form } from '../../src/engine/exercise/index.ts';
import { NO_MISTAKES, render } from '../support/render.ts';
import type { MistakeCounts } from '../support/render.ts';

const CHOSEN: readonly (readonly [Form, string])[] = [
  ['dominant-seventh', 'Eb major'],
  ['diminished-seventh', 'F# minor'],
  ['chromatic', 'C major'],
  ['five-finger', 'G minor'],
];
const TOGETHER: readonly (readonly [Form, string])[] = [
  ['contrary-motion', 'D major'],
  ['sixths-apart', 'A minor'],
  ['scale-in-octaves', 'Bb major'],
  ['four-note-chords', 'F major'],
  ['cadence-second-octave', 'G minor'],
];

async function report(choice: ExerciseChoice, mistakes: MistakeCounts = NO_MISTAKES) {
  const sound = await render({
    seed: 5,
    piano: 'test',
    exercise: choice,
    student: { mistakes, bpm: 66, jitterMs: 9 },
  });
  const assessment = assess(sound, choice);
  if (assessment.kind !== 'report') throw new Error(`expected a report, not ${assessment.kind}`);
  return { report: assessment.report, truth: sound.truth };
}
const oneHand = (form: Form, key: string): ExerciseChoice => ({ key, form, hands: 'right', octaves: 1 });

describe('forms that are heard where they were chosen, on a piano kept out of training', () => {
  it.each(CHOSEN)(
    '%s in %s, played as written, has every note right and nothing said against it',
    async (form, key) => {
      const { report: one } = await report(oneHand(form, key));
      expect(one.missed).toEqual([]);
      expect(new Set(one.notes.map(({ verdict }) => verdict))).toEqual(new Set(['correct']));
      expect(one.words.verdict).toMatch(/[Ee]very note right|[Aa]ll \d+ notes right/);
    },
  );

  it.each(TOGETHER)(
    '%s in %s in both hands, played as written, has no note missed, wrong or too many',
    async (form, key) => {
      const { report: one } = await report({ ...oneHand(form, key), hands: 'together' });
      expect(one.missed).toEqual([]);
      expect(one.notes.filter(({ verdict }) => verdict !== 'correct')).toEqual([]);
    },
  );

  it.each(CHOSEN)('%s in %s with a wrong key has one wrong note, where it was', async (form, key) => {
    const { report: one, truth } = await report(oneHand(form, key), { ...NO_MISTAKES, wrong: 1 });
    const wrong = one.notes.filter(({ verdict }) => verdict === 'wrong');
    expect(wrong.map(({ step }) => step)).toEqual(
      truth.notes.filter(({ verdict }) => verdict === 'wrong').map(({ step }) => step),
    );
  });
});
