import { describe, expect, it } from 'vitest';
import { assessHeard } from '../../../src/engine/assess.ts';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, MinorScale } from '../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { attempt, GOOD_LISTENER, heardOf, played } from './simulated.ts';

const CHOSEN: ExerciseChoice = { key: 'A major', form: 'arpeggio', hands: 'right', octaves: 2 };
const MINOR = { key: 'D minor', form: 'scale', hands: 'right', octaves: 1 } as const;
const SCALES: readonly MinorScale[] = ['natural', 'harmonic', 'melodic'];

function assessed(played: ExerciseChoice, chosen: ExerciseChoice, asChosen = false) {
  const { heard } = attempt(played, { jitterMs: 12 }, GOOD_LISTENER);
  const assessment = assessHeard(heard, chosen, { asChosen });
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  return assessment.report;
}

describe('surely another exercise than chosen', () => {
  it.each<[string, Partial<ExerciseChoice>]>([
    ['another key', { key: 'E major' }],
    ['the minor', { key: 'A minor' }],
    ['one octave instead of two', { octaves: 1 }],
    ['the scale', { form: 'scale' }],
  ])('%s is measured in its place, and said first', (_, other) => {
    const report = assessed({ ...CHOSEN, ...other }, CHOSEN);
    expect(report.exercise).toMatchObject({ ...CHOSEN, ...other });
    expect(report.chosen).toEqual(CHOSEN);
    expect(report.words.situation).toBe('other-exercise');
    expect(report.notes.filter(({ verdict }) => verdict !== 'correct')).toEqual([]);
  });

  it.each([
    ['nine of its thirteen notes right, under three quarters: it is not named', [1, 4, 7, 10], undefined],
    ['ten of them: it is', [1, 4, 7], 'E major'],
  ] as const)('%s', (_, wrong: readonly number[], key) => {
    const steps = buildExercise({ ...CHOSEN, key: 'E major' }).steps;
    const notes = steps.map(({ step, notes: [note] }) =>
      played(1 + 0.4 * step, note!.midi + (wrong.includes(step) ? 1 : 0)),
    );
    expect(matchNotes(heardOf(notes), buildExercise(CHOSEN)).betterFit?.choice.key).toBe(key);
  });

  it('is said in the first sentence, in both languages', () => {
    expect(assessed({ ...CHOSEN, key: 'E major' }, CHOSEN).words).toMatchObject({
      verdict: 'You played E major, not A major; that is what is measured here.',
      nextStep: 'go on with it, or say that you meant the other.',
    });
    const { heard } = attempt({ ...CHOSEN, key: 'E major' }, {}, GOOD_LISTENER);
    const german = assessHeard(heard, CHOSEN, { locale: { language: 'de', naming: 'german' } });
    expect(german.kind === 'report' && german.report.words.verdict).toBe(
      'Du hast E-Dur gespielt, nicht A-Dur; das ist hier gemessen.',
    );
  });

  it('the one that was meant is measured where somebody says so', () => {
    const report = assessed({ ...CHOSEN, key: 'E major' }, CHOSEN, true);
    expect(report.exercise).toMatchObject(CHOSEN);
    expect(report.chosen).toBeUndefined();
  });

  it('the hand that was chosen stays', () => {
    const report = assessed({ ...CHOSEN, key: 'E major' }, { ...CHOSEN, hands: 'left' });
    expect(report.exercise).toMatchObject({
      key: 'E major',
      hands: 'left',
      handLikelihood: { left: 1, right: 0 },
    });
  });

  it.each(
    SCALES.flatMap((one) => SCALES.filter((other) => other !== one).map((other) => [one, other] as const)),
  )('the %s minor scale played for the %s one is named as that', (one, other) => {
    const report = assessed({ ...MINOR, minorScale: one }, { ...MINOR, minorScale: other });
    expect(report.exercise.minorScale).toBe(one);
    expect(report.chosen?.minorScale).toBe(other);
    expect(report.notes.every(({ verdict }) => verdict === 'correct')).toBe(true);
  });

  it('a leading note that is raised once of twice is a mistake and no other scale', () => {
    const { heard, exercise } = attempt({ ...MINOR, minorScale: 'harmonic' });
    const first = heard.notes.findIndex(({ midi }) => midi % 12 === 1);
    const notes = heard.notes.map((note, at) => (at === first ? { ...note, midi: note.midi - 1 } : note));
    const alignment = matchNotes(heardOf(notes), exercise);
    expect(alignment.betterFit).toBeUndefined();
    expect(alignment.matched.filter(({ verdict }) => verdict === 'wrong')).toHaveLength(1);
  });

  it('a bad attempt at the chosen one is measured as what was chosen', () => {
    const mistakes = { wrong: 3, missed: 1, slips: 1, repeats: 1, restarts: 0 };
    for (let seed = 0; seed < 40; seed++) {
      const { heard } = attempt(CHOSEN, { mistakes, jitterMs: 25 }, GOOD_LISTENER, seed);
      const assessment = assessHeard(heard, CHOSEN);
      expect(assessment.kind === 'report' && assessment.report.chosen).toBeUndefined();
    }
  });
});

describe('what is not recognised', () => {
  // The church modes as every textbook of theory has them, semitones above their final.
  it.each([
    ['dorian', [0, 2, 3, 5, 7, 9, 10, 12]],
    ['phrygian', [0, 1, 3, 5, 7, 8, 10, 12]],
    ['lydian', [0, 2, 4, 6, 7, 9, 11, 12]],
    ['mixolydian', [0, 2, 4, 5, 7, 9, 10, 12]],
  ])('offers the nearest, three at most: the %s mode', (_, mode) => {
    for (let tonic = 48; tonic < 72; tonic++) {
      const line = [...mode, ...mode.slice(0, -1).reverse()];
      const heard = heardOf(line.map((key, at) => played(1 + 0.3 * at, tonic + key)));
      const assessment = assessHeard(heard, null);
      expect(assessment.kind).toBe('not-recognised');
      if (assessment.kind !== 'not-recognised') return;
      expect(assessment.nearest.length).toBeGreaterThan(0);
      expect(assessment.nearest.length).toBeLessThanOrEqual(3);
      expect(assessment.nearest[0]).toMatchObject({ form: 'scale', octaves: 1 });
    }
  });

  it('offers nothing for what is near to nothing', () => {
    const keys = [41, 88, 63, 70, 55, 90, 37, 66, 81, 58];
    const assessment = assessHeard(heardOf(keys.map((midi, at) => played(1 + 0.4 * at, midi))), null);
    expect(assessment).toMatchObject({ kind: 'not-recognised', nearest: [] });
  });
});
