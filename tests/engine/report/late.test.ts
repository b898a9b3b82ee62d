import { describe, expect, it } from 'vitest';
import type { ExerciseChoice, Report } from '../../../src/engine/index.ts';
import { lateCrossings } from '../../../src/engine/index.ts';
import { tell, type Playing } from './words/scenes.ts';

// Right hand, fingers 1 2 3 1 2 3 5 up: the thumb goes under into step 3 (common practice, no source).
const A: ExerciseChoice = { key: 'A major', form: 'arpeggio', hands: 'right', octaves: 2 };
// … and in the scale into steps 3, 7 and 10: three, which are unevenness and no single late notes.
const SCALE: ExerciseChoice = { ...A, form: 'scale' };
const lateInto = (...steps: number[]): Partial<Playing> => ({
  change: (step) => (steps.includes(step) ? { lateMs: 130 } : {}),
});
const stepsOf = (report: Report): readonly number[] => lateCrossings(report).map(({ step }) => step);
const unknown = { handKnown: false } as const;

describe('the crossings that came late', () => {
  it('are measured where somebody said which hand it was', () => {
    const report = tell({ choice: A, ...lateInto(3) });
    expect(report.words.situation).toBe('crossing-late');
    expect(stepsOf(report)).toEqual([3]);
  });

  it('are those whose note is told as late where nobody did', () => {
    const report = tell({ choice: A, ...lateInto(3), ...unknown });
    expect(report.words.situation).toBe('late-note');
    expect(stepsOf(report)).toEqual([3]);
  });

  it('are none where the words then speak of no late note, though the likelier hand would cross there', () => {
    const report = tell({ choice: SCALE, ...lateInto(3, 7, 10), ...unknown });
    expect(report.measures.crossings.some(({ late }) => late)).toBe(true);
    expect(report.words.said!.statements.map(({ situation }) => situation)).not.toContain('late-note');
    expect(stepsOf(report)).toEqual([]);
  });

  it('are no others than the crossings: a note late elsewhere is none', () => {
    expect(stepsOf(tell({ choice: A, ...lateInto(5), ...unknown }))).toEqual([]);
  });
});
