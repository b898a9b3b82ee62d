import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessHeard, buildExercise } from '../../src/engine/index.ts';
import { render } from '../support/render.ts';
import type { Truth } from '../support/render.ts';
import type { Mistake } from '../support/student/mistakes.ts';
import { attemptOf } from './attempts.ts';
import { chordAttemptOf } from './chord-attempts.ts';
import { levelResidualsDb } from './measure-score.ts';
import { bestSemitone, fMeasure, matchToTruth, precision, recall } from './note-score.ts';
import type { Timed } from './note-score.ts';
import { scorePlaces } from './place-score.ts';
import { heardAsPlayed } from './truth-report.ts';
import { tallyVerdicts } from './verdict-score.ts';

const WINDOW_MS = 50;

/** Size of a greatest matching by trying everything. */
function greatest(heard: readonly Timed[], truth: readonly Timed[]): number {
  const [first, ...rest] = truth;
  if (first === undefined) return 0;
  const without = greatest(heard, rest);
  return heard.reduce((best, note, index) => {
    const fits = note.midi === first.midi && Math.abs(note.timeSec - first.timeSec) * 1000 <= WINDOW_MS;
    return fits ? Math.max(best, 1 + greatest(heard.toSpliced(index, 1), rest)) : best;
  }, without);
}

describe('matching heard notes with true ones', () => {
  it('finds as many pairs as trying everything does', () => {
    // Onsets on a grid of 10 ms, off it by 1 ms on one side, so that no distance lies exactly on the window.
    const notes = (shift: number): fc.Arbitrary<Timed[]> =>
      fc.array(
        fc
          .record({ timeSec: fc.nat(20), midi: fc.constantFrom(60, 61) })
          .map(({ timeSec, midi }) => ({ timeSec: timeSec / 100 + shift, midi })),
        { maxLength: 6 },
      );
    fc.assert(
      fc.property(notes(0), notes(0.001), (heard, truth) => {
        expect(matchToTruth(heard, truth, WINDOW_MS).length).toBe(greatest(heard, truth));
      }),
    );
  });

  it('gives precision, recall and F by their definitions', () => {
    // Three of four heard are right and three of six true ones were heard: P = 3/4, R = 1/2, F = 2PR/(P+R) = 0.6.
    const counts = { matched: 3, heard: 4, truth: 6 };
    expect(precision(counts)).toBe(0.75);
    expect(recall(counts)).toBe(0.5);
    expect(fMeasure(counts)).toBeCloseTo(0.6, 12);
  });

  it('tells a piano read a semitone low from wrong notes', () => {
    const truth = [60, 64, 67].map((midi, index) => ({ timeSec: index, midi }));
    const low = truth.map((note) => ({ ...note, midi: note.midi - 1 }));
    expect(bestSemitone(low, truth).semitones).toBe(1);
    expect(bestSemitone(truth, truth).semitones).toBe(0);
  });
});

describe('hands an octave apart', () => {
  it('are unequal by up to 12 dB, and one of them leaves out 5 to 20 notes of a hundred', () => {
    const all = Array.from({ length: 60 }, (_, index) => chordAttemptOf('octave-pairs', 'dev', index).spec);
    const unequalDb = all.map(({ student }) => student!.leftHandDb!);
    expect(Math.min(...unequalDb)).toBeLessThan(-9);
    expect(Math.max(...unequalDb)).toBeGreaterThan(9);
    const steps = all.reduce((sum, { exercise }) => sum + buildExercise(exercise).steps.length, 0);
    const absent = all.reduce(
      (sum, { student }) => sum + (student!.mistakes as readonly Mistake[]).length,
      0,
    );
    expect(absent / steps).toBeGreaterThan(0.08);
    expect(absent / steps).toBeLessThan(0.17);
  });
});

describe('levels', () => {
  it('that differ by a constant and a slope over pitch are without error', () => {
    const notes = [50, 57, 60, 71, 80].map((midi) => ({ midi, errorDb: 3 + 0.2 * midi }));
    levelResidualsDb(notes).forEach((residual) => expect(residual).toBeCloseTo(0, 6));
  });
});

/** The strokes of an attempt of the standard set; the sound does not matter here. */
async function truthOf(index: number): Promise<Truth> {
  const { spec } = attemptOf('standard', 'test', index);
  return (await render({ ...spec, home: { room: null, noises: [] } })).truth;
}

describe('verdicts', () => {
  it.each([0, 3, 8, 11, 20])(
    'of attempt %i are all right when every stroke was heard without error',
    async (index) => {
      const truth = await truthOf(index);
      const assessment = assessHeard(heardAsPlayed(truth), truth.exercise);
      const tally = tallyVerdicts(assessment.kind === 'report' ? assessment.report : null, truth);
      expect(tally.rightCalledWrong + tally.rightCalledMissed + tally.falseExtras).toBe(0);
      expect(tally.wrongFound).toBe(tally.wrong);
      expect(tally.missedFound).toBe(tally.missed);
    },
  );

  it.each(['one-hand', 'both-hands', 'octave-pairs'] as const)(
    'of the set %s are told place by place: what was struck, and what was not',
    async (set) => {
      for (let index = 0; index < 6; index++) {
        const { spec } = chordAttemptOf(set, 'test', index);
        const { truth } = await render({ ...spec, home: { room: null, noises: [] } });
        const assessment = assessHeard(heardAsPlayed(truth), truth.exercise);
        const report = assessment.kind === 'report' ? assessment.report : null;
        const places = scorePlaces(report, truth);
        const tally = tallyVerdicts(report, truth);
        const count = (of: string): number => places.filter((place) => place.truth === of).length;
        expect([count('struck'), count('wrong'), count('absent')]).toEqual([
          tally.right,
          tally.wrong,
          tally.missed,
        ]);
        for (const { truth: was, said } of places) {
          if (was === 'struck') expect(said).toBe('correct');
          if (was === 'wrong') expect(said).toBe('wrong');
          if (was === 'absent') expect(['missed', 'unsure']).toContain(said);
        }
      }
    },
  );

  it('without a report count every right note as missed and no mistake as found', async () => {
    const truth = await truthOf(3);
    const tally = tallyVerdicts(null, truth);
    expect(tally.right).toBeGreaterThan(0);
    expect(tally.rightCalledMissed).toBe(tally.right);
    expect(tally.wrongFound).toBe(0);
  });
});
