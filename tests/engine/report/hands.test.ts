import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../src/engine/index.ts';
import { crossingsOf, handsPlayedIn, lateCrossings } from '../../../src/engine/index.ts';
import { tell, type Playing } from './words/scenes.ts';

// Right hand, fingers 1 2 3 1 2 3 5 up: the thumb goes under into step 3 (common practice, no source).
const A: ExerciseChoice = { key: 'A major', form: 'arpeggio', hands: 'right', octaves: 2 };
const lateInto = (step: number): Partial<Playing> => ({
  change: (at) => (at === step ? { lateMs: 130 } : {}),
});

describe('what follows from the fingers', () => {
  it('is measured where somebody said which hand it was', () => {
    const report = tell({ choice: A, ...lateInto(3) });
    expect(report.words.situation).toBe('crossing-late');
    expect(lateCrossings(report).map(({ step }) => step)).toEqual([3]);
    for (const name of ['crossingDelayMs', 'thumbAccentDb', 'evennessWithoutCrossingsPercent'] as const)
      expect(report.measures[name]).toHaveProperty('value');
  });

  it('is not measured where nobody did: the other hand crosses elsewhere; the late note is told', () => {
    const report = tell({ choice: A, ...lateInto(3), handKnown: false });
    expect(report.words.situation).toBe('late-note');
    expect(report.words.steps).toEqual([3]);
    expect(crossingsOf(report)).toEqual([]);
    expect(report.measures.crossings).toEqual([]);
    for (const name of ['crossingDelayMs', 'thumbAccentDb', 'evennessWithoutCrossingsPercent'] as const)
      expect(report.measures[name]).toMatchObject({ notice: { notice: 'hand-not-known' } });
  });

  it('of a report kept from before is not shown either', () => {
    const report = tell({ choice: A, ...lateInto(3) });
    const kept = {
      ...report,
      exercise: { ...report.exercise, handLikelihood: { left: 0.4, right: 0.6 } },
    };
    expect(lateCrossings(kept)).toEqual([]);
  });
});

it('a hand lies where its lowest key does, whichever of a chord sounds first', () => {
  const choice: ExerciseChoice = { key: 'G major', form: 'triads', hands: 'left', octaves: 1 };
  const rolled = tell({ choice, spreadMs: (note) => -15 * note });
  const midis = rolled.notes.flatMap(({ step, midi }) => (step === 0 ? [midi] : []));
  expect(midis[0]).toBeGreaterThan(Math.min(...midis));
  const said = { ...rolled, exercise: { ...rolled.exercise, handLikelihood: { left: 1, right: 0 } } };
  expect(handsPlayedIn([said])).toEqual([{ form: 'triads', hand: 'left', midi: Math.min(...midis) }]);
});

it('where a hand lies is learnt neither from both together nor where its first note was not right', () => {
  const kept = (playing: Playing) => {
    const report = tell(playing);
    return { ...report, exercise: { ...report.exercise, handLikelihood: { left: 0, right: 1 } } };
  };
  const withoutFirst = kept({ choice: A, change: (step) => (step === 0 ? { missed: {} } : {}) });
  expect(handsPlayedIn([kept({ choice: { ...A, hands: 'together' } }), withoutFirst])).toEqual([]);
  expect(handsPlayedIn([kept({ choice: A })])).toHaveLength(1);
});
