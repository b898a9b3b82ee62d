import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, ExpectedNote } from '../../../../src/engine/exercise/index.ts';
import type { PlayedNote } from '../../../../src/engine/listen/index.ts';
import type { Measures } from '../../../../src/engine/report/index.ts';
import { createRandom } from '../../../support/random.ts';
import { played } from '../../match/simulated.ts';
import { plusMinus, reportOf, value } from './series.ts';

const PROGRESSION: ExerciseChoice = { key: 'C major', form: 'progression', hands: 'right', octaves: 1 };
const TOGETHER: ExerciseChoice = { ...PROGRESSION, form: 'triads', hands: 'together' };
const STEP_SEC = 0.8;

/** How one note is struck: later by ms, its level, and how long it is held. */
type Touch = (
  note: ExpectedNote,
  step: number,
  at: number,
) => { lateMs?: number; levelDb?: number; heldSec?: number | null };

/** The exercise at 75 beats a minute; `at` counts the notes of the hand's chord from below. */
function measures(choice: ExerciseChoice, touch: Touch, onsetSdMs = 0): Measures {
  const notes = buildExercise(choice).steps.flatMap(({ step, notes: keys }) =>
    keys.map((key): PlayedNote => {
      const at = keys.filter((other) => other.hand === key.hand).indexOf(key);
      const { lateMs = 0, levelDb = -20, heldSec = 0.7 } = touch(key, step, at);
      const timeSec = 1 + step * STEP_SEC + lateMs / 1000;
      return played(timeSec, key.midi, { levelDb, releaseSec: heldSec === null ? null : timeSec + heldSec });
    }),
  );
  return reportOf(notes, { onsetSdMs }, choice).measures;
}

describe('chords one by one', () => {
  it('have their spread, their hand and the finger that came last', () => {
    const { chords } = measures(PROGRESSION, (_, step, at) => ({ lateMs: at === 1 ? 10 * step : 0 }));
    expect(chords.map(({ hand, lastFinger }) => `${hand} ${lastFinger}`).slice(1)).toEqual([
      'right 3',
      'right 3',
      'right 4',
      'right 3',
    ]);
    chords.forEach(({ step, spreadMs }) => expect(spreadMs).toBeCloseTo(10 * step, 6));
  });

  it('are told for each hand by itself, in the order of the steps', () => {
    const { chords } = measures(TOGETHER, ({ hand }) => ({ lateMs: hand === 'left' ? 60 : 0 }));
    expect(chords.map(({ step }) => step)).toEqual([0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6]);
    chords.forEach(({ spreadMs }) => expect(spreadMs).toBeCloseTo(0, 6));
  });
});

describe('changes of chord', () => {
  it('have the silence from the last key let go to the next onset', () => {
    // Held 0.5 s, but the top note 0.6 s: 0.2 s of silence before the next chord.
    const { changes, changeGapMs } = measures(PROGRESSION, (_note, _step, at) => ({
      heldSec: at === 2 ? 0.6 : 0.5,
    }));
    expect(changes.map(({ step }) => step)).toEqual([1, 2, 3, 4]);
    changes.forEach(({ gapMs }) => expect(value(gapMs)).toBeCloseTo(200, 6));
    expect(value(changeGapMs)).toBeCloseTo(200, 6);
    expect(plusMinus(changeGapMs)).toBeLessThan(plusMinus(changes[0]!.gapMs));
  });

  it('overlap where a chord is held into the next', () => {
    expect(value(measures(PROGRESSION, () => ({ heldSec: 0.85 })).changeGapMs)).toBeCloseTo(-50, 6);
  });

  it('have no gap where the damping of one key was not heard, and say so', () => {
    const { changes, changeGapMs } = measures(PROGRESSION, (_note, step, at) => ({
      heldSec: step > 0 && at === 1 ? null : 0.5,
    }));
    expect(value(changes[0]!.gapMs)).toBeCloseTo(300, 6);
    expect(changes[1]!.gapMs).toMatchObject({ notMeasured: 'the damping of this chord cannot be heard' });
    expect(changeGapMs).toMatchObject({ notMeasured: 'the damping of most chords cannot be heard' });
  });

  it('have one gap together where those of half of them were heard', () => {
    const { changeGapMs } = measures(PROGRESSION, (_note, step) => ({ heldSec: step > 1 ? null : 0.5 }));
    expect(value(changeGapMs)).toBeCloseTo(300, 6);
  });

  it('hesitate by their interval against the others', () => {
    const { changes } = measures(PROGRESSION, (_, step) => ({ lateMs: step >= 3 ? 400 : 0 }));
    changes.forEach(({ step, ratio }) => expect(ratio).toBeCloseTo(step === 3 ? 1.5 : 1, 6));
  });
});

describe('inner balance', () => {
  it('is the inner notes against the outer ones of the same chord', () => {
    const { innerBalanceDb } = measures(PROGRESSION, (_note, step, at) => ({
      levelDb: -20 - step - (at === 1 ? 4 : 0),
    }));
    expect(value(innerBalanceDb)).toBeCloseTo(-4, 6);
  });

  it('takes both hands', () => {
    const { innerBalanceDb } = measures(TOGETHER, ({ hand }, _step, at) => ({
      levelDb: -20 - (at === 1 ? (hand === 'left' ? 6 : 2) : 0),
    }));
    expect(value(innerBalanceDb)).toBeCloseTo(-4, 6);
  });

  it('needs chords of three notes', () => {
    const { innerBalanceDb } = measures({ ...PROGRESSION, form: 'scale' }, () => ({}));
    expect(innerBalanceDb).toMatchObject({ notMeasured: 'needs two chords of three notes' });
  });
});

describe('the thumb in chords of both hands', () => {
  it('is compared within its own hand: a louder hand is no louder thumb', () => {
    const { thumbAccentDb } = measures(TOGETHER, ({ hand }) => ({ levelDb: hand === 'left' ? -14 : -20 }));
    expect(value(thumbAccentDb)).toBeCloseTo(0, 6);
  });

  it('is known no better than its keys are like others: those of the triads up and down are four, in seven chords', () => {
    const { thumbAccentDb } = measures({ ...TOGETHER, hands: 'right' }, () => ({}));
    // A key differs from two others by 2.7 √(1 + ½) dB, which counts as eight keys beside the 7 − 1 freedoms heard, where nothing varies.
    const variance = (8 * 2.7 ** 2 * 1.5) / (8 + 6);
    expect(plusMinus(thumbAccentDb)).toBeCloseTo(Math.sqrt(variance / 4), 9);
  });
});

describe('togetherness', () => {
  it('is the left hand’s mean onset less the right’s: who leads, and how much that varies', () => {
    const { togetherness } = measures(TOGETHER, ({ hand }, step) => ({
      lateMs: hand === 'right' ? 20 + (step % 2 === 0 ? 9 : -12) : 0,
    }));
    expect(value(togetherness!.leadMs)).toBeCloseTo(-20, 6);
    expect(togetherness!.steps.map(({ leftMinusRightMs }) => Math.round(leftMinusRightMs))).toEqual([
      -29, -8, -29, -8, -29, -8, -29,
    ]);
    // Four times −9 and three times 12 about the mean: √(756/6).
    expect(value(togetherness!.apartSdMs)).toBeCloseTo(Math.sqrt(756 / 6), 6);
  });

  it('has the listener’s own noise taken out of what varies', () => {
    const random = createRandom(8);
    const apart = Array.from({ length: 30 }, () => {
      const { togetherness } = measures(TOGETHER, () => ({ lateMs: random.normal(4) }), 4);
      return value(togetherness!.apartSdMs);
    });
    expect(apart.reduce((sum, one) => sum + one, 0) / apart.length).toBeLessThan(2);
  });

  it('tells which hand is the louder', () => {
    const { togetherness } = measures(TOGETHER, ({ hand }) => ({ levelDb: hand === 'left' ? -17 : -20 }));
    expect(value(togetherness!.leftLouderDb)).toBeCloseTo(3, 6);
  });

  it('is not surer of the louder hand than the ear is of partials that both share, however even they are', () => {
    const notes = buildExercise({ ...TOGETHER, form: 'scale' }).steps.flatMap(({ step, notes: keys }) =>
      keys.map(({ midi }) => played(1 + step * STEP_SEC, midi)),
    );
    const { togetherness } = reportOf(notes, { levelSdDb: 1 }, { ...TOGETHER, form: 'scale' }).measures;
    // Beside its octave a note's level is 2.8 times as unsure, and 1.4 times that is shared.
    expect(plusMinus(togetherness!.leftLouderDb)).toBeCloseTo(1.4 * 2.8, 6);
  });
});
