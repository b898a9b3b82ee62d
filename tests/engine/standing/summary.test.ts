import { describe, expect, it } from 'vitest';
import { summarise } from '../../../src/engine/index.ts';
import type { CrossingDelay, ExerciseChoice, Measures } from '../../../src/engine/index.ts';
import { invent } from '../../terminal/invented.ts';

/** Each figure that is kept of a report, by hand. */

const BOTH: ExerciseChoice = { key: 'D major', form: 'triads', hands: 'together', octaves: 1 };
const of = (measures: Partial<Measures>) => summarise(invent({ choice: BOTH, measures }));
const crossing = (delayMs: number, late: boolean): CrossingDelay => ({
  step: 3,
  hand: 'right',
  kind: 'thumb-under',
  direction: 'up',
  delayMs,
  plusMinusMs: 1,
  ratio: 1,
  late,
});
const apart = (...leftMinusRightMs: readonly number[]): NonNullable<Measures['togetherness']> => ({
  leadMs: { value: 0 },
  apartSdMs: { value: 0 },
  leftLouderDb: { value: 0 },
  steps: leftMinusRightMs.map((ms, step) => ({ step, leftMinusRightMs: ms })),
});

describe('what is kept of a report', () => {
  it.each<[string, Partial<Measures>, Partial<ReturnType<typeof summarise>>]>([
    [
      'how many crossings were late, and the delay of the worst',
      { crossings: [crossing(20, false), crossing(95, true), crossing(60, true)] },
      { lateCrossings: 2, worstCrossingMs: 95 },
    ],
    ['no delay where there is no crossing', { crossings: [] }, { lateCrossings: 0, worstCrossingMs: null }],
    [
      'how far apart the hands mostly were, whichever came first',
      { togetherness: apart(-50, 10, 30) },
      { handsApartMs: 30 },
    ],
    ['nothing of hands that are not measured', {}, { handsApartMs: null }],
    [
      'evenness, tempo and spread without their ±',
      {
        evennessPercent: { value: 6, plusMinus: 1 },
        tempoBpm: { value: 72, plusMinus: 0.5 },
        chordSpreadMs: { value: 25, plusMinus: 3 },
      },
      { evennessPercent: 6, tempoBpm: 72, chordSpreadMs: 25 },
    ],
    [
      'nothing of these where not measured',
      {},
      { evennessPercent: null, tempoBpm: null, chordSpreadMs: null },
    ],
    [
      'touch with its ±, none where it is certain',
      { touchMs: { value: -40, plusMinus: 8 } },
      { overlapMs: { value: -40, plusMinus: 8 } },
    ],
    ['touch that is certain', { touchMs: { value: -40 } }, { overlapMs: { value: -40, plusMinus: 0 } }],
    [
      'loudness on a piano whose keys are known',
      { keysKnown: true, loudnessEvennessDb: { value: 2, plusMinus: 0.4 } },
      { loudnessDb: { value: 2, plusMinus: 0.4 } },
    ],
  ])('is %s', (_, measures, kept) => {
    expect(of(measures)).toMatchObject(kept);
  });

  it('is no loudness of a piano whose keys are not known, nor touch that was not heard', () => {
    const kept = of({ loudnessEvennessDb: { value: 2, plusMinus: 0.4 } });
    expect(kept).not.toHaveProperty('loudnessDb');
    expect(kept).not.toHaveProperty('overlapMs');
  });

  it('is how many notes were written, wrong, missed and too many', () => {
    const report = invent({
      choice: { ...BOTH, form: 'scale' },
      missed: [
        { step: 1, hand: 'left' },
        { step: 2, hand: 'right' },
      ],
      wrong: [{ step: 4, hand: 'left', midi: 61, name: 'C#4' }],
      extraSec: [3, 4, 5],
    });
    expect(summarise(report)).toMatchObject({ expected: 30, wrong: 1, missed: 2, extra: 3, unsure: 0 });
  });
});
