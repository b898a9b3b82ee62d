import { beforeAll, describe, expect, it } from 'vitest';
import { assessHeard, listenAndKeep } from '../../../src/engine/index.ts';
import type { ExerciseChoice, Heard, KeptSound, Report } from '../../../src/engine/index.ts';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import type { MatchedNote } from '../../../src/engine/match/index.ts';
import { recheck } from '../../../src/engine/recheck/index.ts';
import { render } from '../../support/render.ts';

/*
 * A line of one hand with one note left out: whoever does not hear a note is no witness that it was not struck. The ear hears all
 * of it, so one struck note at a time is taken from what it heard.
 */
describe('a step of which the ear heard nothing', () => {
  const scale: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
  const LEFT_OUT = 5;
  let heard: Heard;
  let sound: KeptSound;
  beforeAll(async () => {
    const rendered = await render({
      seed: 5,
      piano: 'dev',
      exercise: scale,
      student: { mistakes: [{ kind: 'missed', step: LEFT_OUT, note: 0 }] },
      home: { room: { decaySec: 0.4, directDb: 4 } },
    });
    ({ heard, sound } = listenAndKeep(rendered));
  });

  /** What the ear would have handed on, had it passed over the note of a step, with all that it half believed of it. */
  const without = (step: number): Heard => {
    const note = matchNotes(heard, buildExercise(scale)).matched.find((one) => one.step === step);
    if (note?.verdict !== 'correct') throw new Error(`step ${step} was not heard`);
    const { midi, timeSec } = heard.notes[note.played]!;
    const isOther = (one: { readonly midi: number; readonly timeSec: number }): boolean =>
      one.midi !== midi || Math.abs(one.timeSec - timeSec) > 0.1;
    return {
      ...heard,
      notes: heard.notes.filter(isOther),
      candidates: (heard.candidates ?? []).filter(isOther),
    };
  };
  const reportOf = (of: Heard): Report => {
    const assessment = assessHeard(of, scale, {}, sound);
    if (assessment.kind !== 'report') throw new Error(assessment.kind);
    return assessment.report;
  };

  it('stays missing where nothing there looks like a strike, and says how sure that is', () => {
    const { alignment } = recheck(heard, matchNotes(heard, buildExercise(scale)), sound);
    const missed = alignment.matched.filter(({ verdict }) => verdict === 'missed');
    expect(missed).toMatchObject([{ step: LEFT_OUT }]);
    expect(missed[0]).toHaveProperty('sure', expect.closeTo(1, 2));
    expect(reportOf(heard).words.verdict).toMatch(/^28 of 29 notes right\. One missing: B going up\.$/);
  });

  it.each([0, 1, 9, 14, 20, 28])('is found where it was struck: step %i', (step) => {
    const { missed, unsure, notes } = reportOf(without(step));
    expect(missed.map((note) => note.step)).toEqual([LEFT_OUT]);
    expect(unsure).toEqual([]);
    const before = reportOf(heard).notes.find((note) => note.step === step)!;
    const found = notes.find((note) => note.step === step)!;
    expect(found).toMatchObject({ verdict: 'correct', midi: before.midi });
    expect(Math.abs(found.timeSec - before.timeSec)).toBeLessThan(0.015);
  });

  it('is not found where the first notes were not recorded', () => {
    const fromSec = heard.notes[4]!.timeSec - 0.05;
    const isLater = (one: { readonly timeSec: number }): boolean => one.timeSec > fromSec;
    const late = {
      ...heard,
      notes: heard.notes.filter(isLater),
      candidates: (heard.candidates ?? []).filter(isLater),
    };
    const cut = sound.samples.slice().fill(0, 0, Math.round(fromSec * 22_050));
    const blind = matchNotes(late, buildExercise(scale));
    const { alignment } = recheck(late, blind, { ...sound, samples: cut });
    const isMissed = ({ verdict }: MatchedNote): boolean => verdict === 'missed';
    expect(alignment.matched.map(isMissed)).toEqual(blind.matched.map(isMissed));
  });

  it('in a line of which every note was heard nothing is asked', () => {
    const whole = matchNotes(heard, buildExercise(scale));
    const all = {
      ...whole,
      exercise: { ...whole.exercise, steps: whole.exercise.steps.slice(0, LEFT_OUT) },
      matched: whole.matched.slice(0, LEFT_OUT),
    };
    expect(recheck(heard, all, sound)).toEqual({ heard, alignment: all, rechecks: [] });
  });
});
