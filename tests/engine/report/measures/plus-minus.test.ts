import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../../src/engine/exercise/index.ts';
import { buildExercise } from '../../../../src/engine/exercise/index.ts';
import type { PlayedNote } from '../../../../src/engine/listen/index.ts';
import { shareOverByOnset } from '../../../../src/engine/report/measures/index.ts';
import type { Figure } from '../../../../src/engine/report/types.ts';
import { createRandom } from '../../../support/random.ts';
import { played } from '../../match/simulated.ts';
import { plusMinus, reportOf, value, withIntervals } from './series.ts';

const PROGRESSION: ExerciseChoice = { key: 'C major', form: 'progression', hands: 'right', octaves: 1 };

/** Chords of a progression after these intervals, ms, each key `moveMs` beside its time. */
function progression(ioisMs: readonly number[], moveMs: () => number): readonly PlayedNote[] {
  let timeSec = 1;
  return buildExercise(PROGRESSION).steps.flatMap(({ notes }, step) => {
    if (step > 0) timeSec += ioisMs[step - 1]! / 1000;
    return notes.map(({ midi }) => played(timeSec + moveMs() / 1000, midi));
  });
}

/** Share of figures whose truth lies within so many times their ±. */
function within(times: number, figures: readonly Figure[], truth: number): number {
  const close = figures.filter((figure) => Math.abs(value(figure) - truth) <= times * plusMinus(figure));
  return close.length / figures.length;
}

describe('± of the slowest change, heard 200 times with errors of 4 ms a key', () => {
  it.each([
    ['one that hesitates', [1000, 2400, 1000, 1000], 2.4],
    ['one a little longer than the others', [1000, 1040, 1000, 1000], 1.04],
    ['all alike, of which the one that noise makes longest is told', [1000, 1000, 1000, 1000], 1],
  ])('%s: the truth within it in 60 of 100 and more, within twice it in 92', (_, ioisMs, truth) => {
    const random = createRandom(11);
    const heard = Array.from({ length: 200 }, () => {
      // Of chords each key is claimed to err by 1.55 of the listener's own error.
      const notes = progression(ioisMs, () => random.normal(4));
      return reportOf(notes, { onsetSdMs: 4 / 1.55 }, PROGRESSION).measures.changeHesitationRatio;
    });
    expect(within(1, heard, truth)).toBeGreaterThanOrEqual(0.6);
    expect(within(2, heard, truth)).toBeGreaterThanOrEqual(0.92);
  });
});

describe('± of evenness', () => {
  it('covers a listener of whose errors one in ten is four times as large: within twice it in 92 of 100', () => {
    const random = createRandom(12);
    const heard = Array.from({ length: 200 }, () => {
      const notes = withIntervals([400]).map((note) => ({
        ...note,
        timeSec: note.timeSec + random.normal(random.chance(0.1) ? 8 : 2) / 1000,
      }));
      return reportOf(notes, { onsetSdMs: Math.sqrt(0.9 * 2 ** 2 + 0.1 * 8 ** 2) }).measures.evennessPercent;
    });
    expect(within(2, heard, 0)).toBeGreaterThanOrEqual(0.92);
  });
});

describe('± of the thumb’s accent', () => {
  it('is no smaller than what keys of a piano differ by, however well a few agree', () => {
    const level = (step: number): Partial<PlayedNote> => ({ levelDb: -20 + 0.01 * (step % 2) });
    const { thumbAccentDb } = reportOf(withIntervals([400], level)).measures;
    expect(Math.abs(value(thumbAccentDb))).toBeLessThan(0.1);
    expect(plusMinus(thumbAccentDb)).toBeGreaterThan(1);
  });

  it('covers pianos whose keys differ by 2.5 dB and a thumb like the others: 60 of 100 and 92 of 100', () => {
    const random = createRandom(13);
    const heard = Array.from({ length: 200 }, () => {
      const keys = Array.from({ length: 128 }, () => random.normal(2.5));
      const notes = withIntervals([400]).map((note) => ({ ...note, levelDb: -20 + keys[note.midi]! }));
      return reportOf(notes).measures.thumbAccentDb;
    });
    expect(within(1, heard, 0)).toBeGreaterThanOrEqual(0.6);
    expect(within(2, heard, 0)).toBeGreaterThanOrEqual(0.92);
  });
});

describe('how sure a single onset makes of being over a bound', () => {
  it.each([
    ['on it', 0, 0.499, 0.501],
    ['4.5 SD over, which one error in three hundred is', 4.5, 0.993, 0.998],
    ['8 SD over', 8, 0.9999, 1],
  ])('%s: large errors come more often than a normal distribution has them', (_, over, least, most) => {
    const sure = shareOverByOnset({ value: 24 + 3 * over, plusMinus: 3 }, 24);
    expect(sure).toBeGreaterThanOrEqual(least);
    expect(sure).toBeLessThanOrEqual(most);
  });

  it('is certain where the listener claims no error', () => {
    expect(shareOverByOnset({ value: 25, plusMinus: 0 }, 24)).toBe(1);
  });
});
