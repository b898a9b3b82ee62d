import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { REPORT, tellWords, writeReport } from '../../../src/engine/report/index.ts';
import type { Report } from '../../../src/engine/report/index.ts';
import { summarise } from '../../../src/engine/standing/index.ts';
import { exerciseId } from '../../../src/engine/standing/group.ts';
import { inventedPassages } from '../../support/passages.ts';
import { createRandom } from '../../support/random.ts';
import { heardOf, played } from '../match/simulated.ts';

const PASSAGES = inventedPassages(30);

/** Plays what is written at ♩ = 60, each step so much late; `leave`: steps that are left out. */
function playAt(
  choice: ExerciseChoice,
  lateMs: (step: number) => number,
  leave: readonly number[] = [],
): Report {
  const exercise = buildExercise(choice);
  const notes = exercise.steps
    .filter(({ step }) => !leave.includes(step))
    .flatMap(({ step, beat, notes: keys }) =>
      keys.map(({ midi }) => played(1 + beat + lateMs(step) / 1000, midi, { releaseSec: 1.2 + beat })),
    );
  const heard = heardOf(notes);
  return writeReport(heard, matchNotes(heard, exercise));
}

const valueOf = (figure: Report['measures']['npvi']): number => ('value' in figure ? figure.value : NaN);

describe('the report of a passage', () => {
  it('finds every note of a faultless attempt, and its rhythm even, whatever it is', () => {
    for (const choice of PASSAGES) {
      const report = playAt(choice, () => 0);
      const written = buildExercise(choice).steps.flatMap(({ notes }) => notes).length;
      expect(report.notes.filter(({ verdict }) => verdict === 'correct')).toHaveLength(written);
      expect([report.missed, report.unsure, report.betterFit].flat().filter(Boolean)).toEqual([]);
      expect(valueOf(report.measures.evennessPercent)).toBeCloseTo(0, 6);
      expect(valueOf(report.measures.tempoBpm)).toBeCloseTo(60, 6);
      expect(report.measures.intervals.every(({ deviationMs }) => Math.abs(deviationMs) < 0.001)).toBe(true);
    }
  });

  it('measures evenness as the spread about the written rhythm, against the mean step', () => {
    for (const choice of PASSAGES.slice(0, 6)) {
      const random = createRandom(5);
      const late = buildExercise(choice).steps.map(() => random.normal(15));
      const { steps } = buildExercise(choice);
      // By its definition: SD of how far each interval strays from its written length, of the mean step.
      const strays = late.slice(1).map((ms, at) => ms - late[at]!);
      const last = steps.at(-1)!;
      const drift = (1000 * last.beat + late.at(-1)! - late[0]!) / last.beat;
      const own = steps
        .slice(1)
        .map(({ beat }, at) => strays[at]! + (1000 - drift) * (beat - steps[at]!.beat));
      const mean = own.reduce((sum, one) => sum + one, 0) / own.length;
      const sd = Math.sqrt(own.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (own.length - 1));
      const stepMs = (drift * last.beat) / last.step;
      const told = valueOf(playAt(choice, (step) => late[step]!).measures.evennessPercent);
      expect(told).toBeCloseTo((100 * sd) / stepMs, 1);
    }
  });

  it('tells what is missing by its bar, in both languages', () => {
    const choice = PASSAGES[0]!;
    const { steps } = buildExercise(choice);
    const step = steps.findIndex(({ notes, bar }) => bar === 2 && notes.length === 1);
    const report = playAt(choice, () => 0, [step]);
    expect(report.missed.map((one) => one.step)).toEqual([step]);
    expect(report.words.verdict).toContain('bar 2');
    expect(tellWords(report.words, { language: 'de', naming: 'german' }).verdict).toContain('Takt 2');
  });

  it('carries the passage and passes its own check, so that it is whole by itself', () => {
    for (const choice of PASSAGES.slice(0, 3)) {
      const report = playAt(choice, (step) => 8 * (step % 2));
      const again: unknown = JSON.parse(JSON.stringify(report));
      expect(v.is(REPORT, again)).toBe(true);
      expect((again as Report).exercise.passage).toEqual(choice.passage);
      expect(exerciseId(summarise(report).exercise)).toBe(exerciseId(choice));
    }
  });

  it('refuses a report whose passage is not there, or is none', () => {
    const report = playAt(PASSAGES[0]!, () => 0);
    const { passage, ...exercise } = report.exercise;
    expect(v.is(REPORT, { ...report, exercise })).toBe(false);
    const noNotes = { ...passage!, notes: [] };
    expect(v.is(REPORT, { ...report, exercise: { ...exercise, passage: noNotes } })).toBe(false);
  });
});
