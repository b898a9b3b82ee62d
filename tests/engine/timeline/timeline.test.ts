import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildExercise, timelineOf } from '../../../src/engine/index.ts';
import type { ExtraKind } from '../../../src/engine/index.ts';
import { createRandom } from '../../support/random.ts';

const SCALE = buildExercise({ key: 'C major', form: 'scale', hands: 'right', octaves: 2 });
const BOTH = buildExercise({ key: 'C major', form: 'scale', hands: 'together', octaves: 1 });
/** of two notes a beat */
const STEP_SEC = 0.4;
const START_SEC = 1;

interface Note {
  readonly timeSec: number;
  readonly step: number;
  readonly verdict: 'correct' | 'extra';
  readonly extraKind?: ExtraKind;
}

/** A note a step, `offSec` from even. */
const played = (offSec: (step: number) => number, exercise = SCALE): Note[] =>
  exercise.steps.map(({ step }) => ({
    step,
    timeSec: START_SEC + step * STEP_SEC + offSec(step),
    verdict: 'correct',
  }));
const lateMs = (notes: readonly Note[], exercise = SCALE): number[] =>
  timelineOf({ notes }, exercise).strikes.map(({ lateSec }) => Math.round(lateSec * 1e6) / 1e3 + 0);
const only = (late: Readonly<Record<number, number>>, exercise = SCALE): number[] =>
  exercise.steps.map(({ step }) => late[step] ?? 0);

describe('what stands beside its tick', () => {
  it('of even playing, nothing', () => {
    expect(lateMs(played(() => 0))).toEqual(only({}));
  });

  it('one late note alone: it, and not the next, which comes sooner after it', () => {
    expect(lateMs(played((step) => (step === 10 ? 0.09 : 0)))).toEqual(only({ 10: 90 }));
  });

  it('a note that cost time: it, and not all that follow', () => {
    expect(lateMs(played((step) => (step >= 10 ? 0.09 : 0)))).toEqual(only({ 10: 90 }));
  });

  it('every crossing late', () => {
    const crossings = SCALE.steps.filter((step) => step.crossings.length > 0).map(({ step }) => step);
    expect(crossings).toHaveLength(6);
    const notes = played((step) => 0.09 * crossings.filter((at) => at <= step).length);
    expect(lateMs(notes)).toEqual(only(Object.fromEntries(crossings.map((step) => [step, 90]))));
  });

  it('a late last note, and a late second one', () => {
    const last = SCALE.steps.length - 1;
    expect(lateMs(played((step) => (step === last ? 0.2 : 0)))).toEqual(only({ [last]: 200 }));
    expect(lateMs(played((step) => (step >= 1 ? 0.08 : 0)))).toEqual(only({ 1: 80 }));
  });

  it('in a steady ritardando, where each interval is longer than the last by as much, nothing', () => {
    expect(lateMs(played((step) => 0.004 * step * (step - 1)))).toEqual(only({}));
  });

  it('in a steady ritardando with one late note, that one', () => {
    const slowing = (step: number): number => 0.004 * step * (step - 1) + (step === 12 ? 0.1 : 0);
    expect(lateMs(played(slowing))).toEqual(only({ 12: 100 }));
  });

  it('after a stop, nothing: the pulse begins anew', () => {
    const notes = played((step) => (step >= 10 ? 4 : 0));
    const { strikes } = timelineOf({ notes }, SCALE);
    for (const { timeSec, tickSec } of strikes) expect(tickSec).toBeCloseTo(timeSec, 9);
    // What the stop was too long is told all the same.
    expect(strikes[10]!.lateSec).toBeCloseTo(4, 9);
  });

  it('after a way back, nothing, and the way back parts both', () => {
    const notes = played((step) => (step >= 10 ? 1.13 : 0));
    const back: Note = { timeSec: notes[9]!.timeSec + 0.5, step: 7, verdict: 'extra', extraKind: 'restart' };
    expect(lateMs([...notes, back])).toEqual(only({}));
    expect(lateMs(notes)).toEqual(only({ 10: 1130 }));
  });

  it('where a key was perhaps struck again, nothing, as if it had been', () => {
    const notes = played((step) => (step >= 10 ? 0.23 : 0));
    const againSec = notes[9]!.timeSec + 0.2;
    const again: Note = { timeSec: againSec, step: 9, verdict: 'extra', extraKind: 'repeat' };
    const perhaps = timelineOf({ notes, perhapsAgainSec: [againSec] }, SCALE);
    expect(perhaps).toEqual(timelineOf({ notes: [...notes, again] }, SCALE));
    for (const { timeSec, tickSec } of perhaps.strikes) expect(tickSec).toBeCloseTo(timeSec, 9);
    expect(lateMs(notes)).toEqual(only({ 10: 230 }));
  });

  it('with both hands the step: each hand is as far from the tick as it was struck', () => {
    const notes = BOTH.steps.flatMap(({ step, notes: keys }) =>
      keys.map(({ hand }) => ({
        step,
        hand,
        verdict: 'correct' as const,
        timeSec: START_SEC + step * STEP_SEC + (hand === 'right' && step === 6 ? 0.06 : 0),
      })),
    );
    const { strikes, tickSec } = timelineOf({ notes }, BOTH);
    expect(strikes[6]!.notes).toHaveLength(2);
    expect(strikes[6]!.lateSec).toBeCloseTo(0.03, 9);
    for (const { step } of BOTH.steps) expect(tickSec.get(step)).toBeCloseTo(START_SEC + step * STEP_SEC, 9);
  });
});

describe('where a note that was not struck is thought', () => {
  it('in the pulse of the one before, whatever comes after it', () => {
    const notes = played((step) => (step > 8 ? 0.15 : 0)).filter(({ step }) => step !== 8);
    expect(timelineOf({ notes }, SCALE).tickSec.get(8)).toBeCloseTo(START_SEC + 8 * STEP_SEC, 9);
  });

  it('before the first and after the last at their pace', () => {
    const notes = played(() => 0).filter(({ step }) => step > 1 && step < 27);
    const { tickSec } = timelineOf({ notes }, SCALE);
    for (const { step } of SCALE.steps) expect(tickSec.get(step)).toBeCloseTo(START_SEC + step * STEP_SEC, 9);
  });

  it('between its neighbours, where these leave it no room', () => {
    const notes = played((step) => (step > 8 ? -0.5 : 0)).filter(({ step }) => step !== 8);
    const { tickSec } = timelineOf({ notes }, SCALE);
    expect(tickSec.get(8)).toBeCloseTo(START_SEC + 7 * STEP_SEC + 0.15, 9);
  });

  it('nowhere where nothing was struck', () => {
    expect(timelineOf({ notes: [] }, SCALE)).toEqual({
      strikes: [],
      beatSec: null,
      stepSec: null,
      tickSec: new Map(),
    });
  });
});

describe('made even', () => {
  it('has one distance a beat; a stop becomes a step, a way back keeps its time', () => {
    const notes = played((step) => (step >= 20 ? 3.2 : step >= 10 ? 3 : 0) + (step === 5 ? 0.07 : 0));
    const back: Note = { timeSec: notes[19]!.timeSec + 0.3, step: 18, verdict: 'extra', extraKind: 'repeat' };
    const { strikes, beatSec } = timelineOf({ notes: [...notes, back] }, SCALE);
    expect(beatSec).toBeCloseTo(2 * STEP_SEC, 9);
    strikes.slice(1).forEach(({ step, evenSec }, at) => {
      expect(evenSec - strikes[at]!.evenSec).toBeCloseTo(step === 20 ? STEP_SEC + 0.2 : STEP_SEC, 9);
    });
  });
});

describe('moved in time and played at another speed', () => {
  const offs = fc.array(fc.double({ min: -0.15, max: 0.15, noNaN: true }), { minLength: 29, maxLength: 29 });

  it('all places move and stretch with the notes', () => {
    fc.assert(
      fc.property(
        offs,
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0.4, max: 3, noNaN: true }),
        (off, shiftSec, stretch) => {
          const notes = played((step) => off[step]!);
          const moved = notes.map((note) => ({ ...note, timeSec: shiftSec + stretch * note.timeSec }));
          const [a, b] = [timelineOf({ notes }, SCALE), timelineOf({ notes: moved }, SCALE)];
          expect(b.beatSec).toBeCloseTo(stretch * a.beatSec!, 6);
          a.strikes.forEach((strike, at) => {
            expect(b.strikes[at]!.tickSec).toBeCloseTo(shiftSec + stretch * strike.tickSec, 6);
            expect(b.strikes[at]!.evenSec - b.strikes[0]!.evenSec).toBeCloseTo(
              stretch * (strike.evenSec - a.strikes[0]!.evenSec),
              6,
            );
          });
        },
      ),
    );
  });
});

describe('notes of a player who is not quite steady', () => {
  it('lie about their ticks hardly wider than about the true pulse', () => {
    // 10 ms each, as trained players' scales (van Vugt et al. 2012, memory), on a pulse that is known.
    const random = createRandom(7);
    const squares = Array.from({ length: 300 }, () => {
      const late = lateMs(played(() => random.normal(0.01)));
      return late.reduce((sum, ms) => sum + ms ** 2, 0) / late.length;
    });
    const rmsMs = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
    // The interval from note to note alone would have 10·√2.
    expect(rmsMs).toBeLessThan(12);
  });
});
