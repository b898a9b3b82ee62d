import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../../src/engine/exercise/index.ts';
import { buildExercise } from '../../../../src/engine/exercise/index.ts';
import type { Heard } from '../../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../../src/engine/match/index.ts';
import type { Alignment } from '../../../../src/engine/match/index.ts';
import { notMeasured } from '../../../../src/engine/report/measures/estimate.ts';
import { shareOver, shareOverByFew } from '../../../../src/engine/report/measures/index.ts';
import { writeReport } from '../../../../src/engine/report/index.ts';
import type { Report } from '../../../../src/engine/report/index.ts';
import { createRandom } from '../../../support/random.ts';
import { heardOf } from '../../match/simulated.ts';
import { playNotes, tell } from './scenes.ts';

const SCALE: ExerciseChoice = { key: 'B major', form: 'scale', hands: 'left', octaves: 1 };
const TRIADS: ExerciseChoice = { key: 'E♭ major', form: 'triads', hands: 'left', octaves: 1 };

const codes = ({ words }: Report): readonly string[] =>
  words.said!.statements.map(({ situation }) => situation);

describe('how sure a figure of few values is', () => {
  // Student's t, one-sided 99 %: 4.541, 2.764, 2.528, 2.457 for 3, 10, 20, 30 degrees of freedom (printed tables, memory).
  it.each([
    [3, 4.541],
    [10, 2.764],
    [20, 2.528],
    [30, 2.457],
  ])('%d degrees of freedom: 99 %% at t = %d', (freedom, t) => {
    expect(shareOverByFew({ value: t, plusMinus: 1 }, 0, freedom)).toBeCloseTo(0.99, 2);
    expect(shareOverByFew({ value: -t, plusMinus: 1 }, 0, freedom)).toBeCloseTo(0.01, 2);
  });
});

describe('how sure it is that a figure lies over a bound', () => {
  // Normal distribution up to 1, 1.2816 and 2.3263 (printed tables, memory).
  it.each([
    [1, 0.8413],
    [-1, 0.1587],
    [1.2816, 0.9],
    [2.3263, 0.99],
    [0, 0.5],
  ])('by %f of its ±', (by, sure) => {
    expect(shareOver({ value: 10 + 3 * by, plusMinus: 3 }, 10)).toBeCloseTo(sure, 4);
  });

  it('certainly or not at all where it has none; not at all where nothing was measured', () => {
    expect(shareOver({ value: 10.1 }, 10)).toBe(1);
    expect(shareOver({ value: 10 }, 10)).toBe(0);
    expect(shareOverByFew({ value: 10.1 }, 10, 5)).toBe(1);
    expect(shareOverByFew({ value: 10 }, 10, 5)).toBe(0);
    expect(shareOverByFew({ value: 99, plusMinus: 1 }, 10, 0)).toBe(0);
    const nothing = notMeasured({ notice: 'no-turn' });
    expect([shareOver(nothing, 0), shareOverByFew(nothing, 0, 5)]).toEqual([0, 0]);
  });
});

/** Intervals of a scale, each so many times the usual one, with fingers that scatter by 6 ms. */
function timed(times: (step: number) => number, seed: number): Report {
  const random = createRandom(seed);
  const away = Array.from({ length: 64 }, () => random.normal(6));
  const stepMs = 240;
  return tell({
    choice: SCALE,
    bpm: 125,
    change: (step) => ({
      lateMs: step === 0 ? 0 : (times(step) - 1) * stepMs + away[step]! - away[step - 1]!,
    }),
  });
}

describe('what a tempo did', () => {
  const SEEDS = Array.from({ length: 40 }, (_, seed) => seed + 1);

  it('a rubato that is not yet back when the scale is over is no drift', () => {
    const rubato = (step: number): number => 1 + 0.12 * Math.sin((2 * Math.PI * step) / 19);
    const told = SEEDS.filter((seed) => codes(timed(rubato, seed)).includes('drift'));
    expect(told).toEqual([]);
  });

  it('a drift is told, and not taken for a rubato', () => {
    const drift = (step: number): number => 1 - 0.2 * (step / 14 - 0.5);
    const all = SEEDS.map((seed) => codes(timed(drift, seed)));
    expect(all.filter((said) => said.includes('drift')).length).toBeGreaterThanOrEqual(32);
    expect(all.filter((said) => said.includes('tempo-sways')).length).toBeLessThanOrEqual(2);
  });
});

it('a last note struck at once with the one before it is uneven, and not missing', () => {
  const last = buildExercise(SCALE).steps.length - 1;
  const report = tell({ choice: SCALE, change: (step) => ({ lateMs: step === last ? -330 : 0 }) });
  expect(report.missed).toEqual([]);
  expect(report.notes.filter(({ verdict }) => verdict !== 'correct')).toEqual([]);
});

describe('inner notes that hardly sound', () => {
  /** The inner key of these chords left unsure by the closer look, as one that is hardly struck is. */
  function faintIn(
    steps: readonly number[],
    heard: Partial<Heard> = {},
    locale?: { language: 'de' },
  ): Report {
    const choice = TRIADS;
    const played = heardOf(playNotes({ choice }), { onsetSdMs: 1, ...heard });
    const alignment = matchNotes(played, buildExercise(choice));
    const matched = alignment.matched.map((note): Alignment['matched'][number] => {
      const { step, expected } = note;
      const chord = alignment.exercise.steps[step]!.notes;
      if (!steps.includes(step) || expected !== chord[1]) return note;
      return { step, expected, verdict: 'unsure', reason: { notice: 'too-faint', name: expected.name } };
    });
    const asked = locale && { locale: { ...locale, naming: 'german' } as const };
    return writeReport(played, { ...alignment, matched }, asked);
  }

  it('in most chords: told, in both languages', () => {
    const { words } = faintIn([0, 2, 3, 5]);
    expect(words.verdict).toBe(
      'Every note that could be told is right. The inner notes of the chords hardly sound, or not at all.',
    );
    expect(faintIn([0, 2, 3, 5], {}, { language: 'de' }).words.verdict).toMatch(
      /Die Mittelstimmen der Akkorde klingen kaum oder gar nicht\.$/,
    );
  });

  it.each([
    ['in two chords: asked, not blamed', [2, 5], {}],
    [
      'in noise, which hides them',
      [0, 2, 3, 5],
      { findings: [{ kind: 'noise', detail: 'It is loud.' }] } as Partial<Heard>,
    ],
  ])('%s', (_, steps, heard) => {
    expect(codes(faintIn(steps, heard))).not.toContain('inner-notes-soft');
  });
});
