import { describe, expect, it } from 'vitest';
import { allChoices, buildExercise, isRecognised } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { assessHeard } from '../../../src/engine/assess.ts';
import { handsPlayedIn, isHandKnown } from '../../../src/engine/report/index.ts';
import type { Report } from '../../../src/engine/report/index.ts';
import { recogniseFrom } from '../../../src/engine/match/index.ts';
import { heardOf, played } from './simulated.ts';

/** The exercise as written, moved by some octaves. */
function playing(choice: ExerciseChoice, octaves = 0) {
  const notes = buildExercise(choice).steps.flatMap(({ beat, notes: keys }) =>
    keys.map(({ midi }) => played(1 + beat * 0.8, midi + 12 * octaves)),
  );
  return heardOf(notes);
}

function reportOf(
  choice: ExerciseChoice,
  as: ExerciseChoice | null,
  earlier: readonly Report[] = [],
): Report {
  const assessment = assessHeard(playing(choice), as, { earlier });
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  return assessment.report;
}

const B_FLAT: ExerciseChoice = { key: 'Bb major', form: 'arpeggio', hands: 'right', octaves: 2 };

describe('which hand played one hand alone', () => {
  it('is never recognised with confidence, in no key, form or register, and never as both', () => {
    const alone = allChoices().filter(
      (choice) => isRecognised(choice) && choice.hands !== 'together' && choice.octaves <= 2,
    );
    for (const [index, choice] of alone.entries()) {
      if (index % 5 !== 0) continue;
      for (const octaves of [-1, 0, 1]) {
        const { choice: found, handLikelihood } = recogniseFrom(playing(choice, octaves));
        expect(found?.hands).not.toBe('together');
        expect(Math.max(handLikelihood!.left, handLikelihood!.right)).toBeLessThan(0.9);
        expect(handLikelihood!.left + handLikelihood!.right).toBeCloseTo(1);
      }
    }
  });

  it('is the likelier one where usual books have it: the right from B flat below middle C, the left an octave lower', () => {
    expect(recogniseFrom(playing(B_FLAT))).toMatchObject({ choice: B_FLAT, octaveShift: 0 });
    const left = { ...B_FLAT, hands: 'left' } as const;
    expect(recogniseFrom(playing(left))).toMatchObject({ choice: left, octaveShift: 0 });
  });

  it('stays as somebody chose it, wherever it lies', () => {
    const left = { ...B_FLAT, hands: 'left' } as const;
    const { exercise, ...report } = reportOf(B_FLAT, left);
    expect(exercise).toMatchObject({ hands: 'left', octaveShift: 1, handLikelihood: { left: 1, right: 0 } });
    expect(isHandKnown({ exercise, ...report })).toBe(true);
  });

  it('is told as not known where it was recognised, the likelier first', () => {
    const report = reportOf(B_FLAT, null);
    expect(isHandKnown(report)).toBe(false);
    expect(report.exercise.handLikelihood!.right).toBeGreaterThan(0.5);
  });

  it('is nobody’s question where both play', () => {
    const report = reportOf({ ...B_FLAT, hands: 'together' }, null);
    expect(report.exercise.handLikelihood).toBeUndefined();
    expect(isHandKnown(report)).toBe(true);
  });

  it('is learnt from corrections, by form and register', () => {
    const corrected = [1, 2, 3].map(() => reportOf(B_FLAT, { ...B_FLAT, hands: 'left' }));
    const again = reportOf({ ...B_FLAT, key: 'A major' }, null, corrected);
    expect(again.exercise.hands).toBe('left');
    expect(isHandKnown(again)).toBe(false);
    expect(reportOf({ ...B_FLAT, form: 'scale' }, null, corrected).exercise.hands).toBe('right');
    expect(reportOf({ ...B_FLAT, key: 'F# major' }, null, corrected).exercise.hands).toBe('right');
  });

  it('is not learnt from what was only recognised, nor from reports of earlier versions', () => {
    const recognised = reportOf(B_FLAT, null);
    const { handLikelihood: _left, ...exercise } = reportOf(B_FLAT, B_FLAT).exercise;
    expect(handsPlayedIn([recognised, { ...recognised, exercise }])).toEqual([]);
    expect(handsPlayedIn([reportOf(B_FLAT, B_FLAT)])).toEqual([
      { form: 'arpeggio', hand: 'right', midi: 58 },
    ]);
  });
});
