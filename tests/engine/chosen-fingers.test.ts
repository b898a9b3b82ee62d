import { describe, expect, it } from 'vitest';
import { assessHeard } from '../../src/engine/index.ts';
import { buildExercise, withPrinciple, writeFinger } from '../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../src/engine/exercise/index.ts';
import type { Report } from '../../src/engine/report/index.ts';
import { attempt, GOOD_LISTENER } from './match/simulated.ts';

const SCALE: ExerciseChoice = { key: 'Ab major', form: 'scale', hands: 'left', octaves: 2 };
const THUMBS_TOGETHER = withPrinciple(SCALE, 'left', 'thumbs-together');
/** A student whose crossings come late. */
const LATE = { jitterMs: 4, lateCrossing: { ms: 110, kind: 'over-thumb', direction: 'up' } } as const;

function reportOf(assessment: ReturnType<typeof assessHeard>): Report {
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  return assessment.report;
}
const crossedInto = ({ measures }: Report, late: boolean): readonly number[] =>
  measures.crossings.filter((crossing) => crossing.late === late || !late).map(({ step }) => step);
const crossingsIn = (choice: ExerciseChoice): readonly number[] =>
  buildExercise(choice).steps.flatMap(({ step, crossings }) => crossings.map(() => step));

describe('an attempt under other fingers than the usual', () => {
  const { heard } = attempt(THUMBS_TOGETHER, LATE, GOOD_LISTENER, 3);

  it('is measured at the crossings of those fingers, and says so where they come late', () => {
    const report = reportOf(assessHeard(heard, THUMBS_TOGETHER));
    const late = crossedInto(report, true);
    const over = buildExercise(THUMBS_TOGETHER).steps.flatMap(({ step, crossings }) =>
      crossings.some(({ kind, direction }) => kind === 'over-thumb' && direction === 'up') ? [step] : [],
    );
    expect(late).toEqual(over);
    expect(late.every((step) => crossingsIn(THUMBS_TOGETHER).includes(step))).toBe(true);
    expect(report.words.verdict).toMatch(/cross/);
    expect(report.exercise.fingering).toEqual({ left: 'thumbs-together' });
  });

  it('is so too where they are kept and the choice says nothing, chosen or recognised', () => {
    const fingerings = [{ ...THUMBS_TOGETHER, hands: 'together' as const }];
    const wanted = reportOf(assessHeard(heard, THUMBS_TOGETHER)).measures.crossings;
    expect(reportOf(assessHeard(heard, SCALE, { fingerings })).measures.crossings).toEqual(wanted);
    const recognised = assessHeard(heard, null, { fingerings });
    expect(reportOf(recognised).exercise.fingering).toEqual({ left: 'thumbs-together' });
  });

  it('is measured at the usual crossings where nobody keeps any', () => {
    const report = reportOf(assessHeard(heard, SCALE));
    expect(report.exercise).not.toHaveProperty('fingering');
    expect(report.measures.crossings.map(({ step }) => step)).not.toEqual(
      reportOf(assessHeard(heard, THUMBS_TOGETHER)).measures.crossings.map(({ step }) => step),
    );
  });

  it('with a finger written over a note crosses where that finger has it', () => {
    const scale: ExerciseChoice = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 };
    const written = [
      [3, 4],
      [4, 1],
      [5, 2],
      [6, 3],
      [7, 4],
    ].reduce(
      (now, [step, finger]) => writeFinger(now, { hand: 'right', step: step!, fromBottom: 0 }, finger!),
      scale,
    );
    const played = attempt(written, { jitterMs: 4 }, GOOD_LISTENER, 5).heard;
    const steps = reportOf(assessHeard(played, written)).measures.crossings.map(({ step }) => step);
    expect(steps).toContain(4);
    expect(steps).not.toContain(3);
  });
});

describe('an attempt with other notes to a beat, or in another register', () => {
  it('has its tempo by them', () => {
    const scale: ExerciseChoice = {
      key: 'C major',
      form: 'scale',
      hands: 'right',
      octaves: 2,
      notesABeat: 4,
    };
    const { heard } = attempt(scale, { bpm: 60, jitterMs: 0 }, {}, 1);
    const { tempoBpm } = reportOf(assessHeard(heard, scale)).measures;
    expect('value' in tempoBpm && tempoBpm.value).toBeCloseTo(60, 0);
    const inTwos = reportOf(assessHeard(heard, { ...scale, notesABeat: 2 })).measures.tempoBpm;
    expect('value' in inTwos && inTwos.value).toBeCloseTo(120, 0);
  });

  it('lies where it was asked for: nothing is remarked on, and as printed it is an octave off', () => {
    const low: ExerciseChoice = { key: 'C major', form: 'scale', hands: 'right', octaves: 2, register: -1 };
    const { heard } = attempt(low, {}, GOOD_LISTENER, 1);
    expect(reportOf(assessHeard(heard, low)).exercise.octaveShift).toBe(0);
    const printed = reportOf(
      assessHeard(heard, { key: 'C major', form: 'scale', hands: 'right', octaves: 2 }),
    );
    expect(printed.exercise.octaveShift).toBe(-1);
  });
});
