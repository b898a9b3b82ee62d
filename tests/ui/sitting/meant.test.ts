import { describe, expect, it } from 'vitest';
import type { Assessment, ExerciseChoice } from '../../../src/engine/index.ts';
import { answeredBy, meantBy } from '../../../src/ui/sitting/meant.ts';
import { TOLD } from './rig.ts';

const D: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const told = TOLD.kind === 'report' ? TOLD : null;

/** The attempt as told, where nobody said which hand it was. */
function unsaid(left: number): Assessment {
  const { report } = told!;
  const exercise = { ...report.exercise, handLikelihood: { left, right: 1 - left } };
  return { ...told!, report: { ...report, exercise } };
}

describe('what an attempt may have been instead, at the piano', () => {
  it('is nothing where it was chosen and played', () => {
    expect(meantBy(TOLD).ways).toEqual([]);
  });

  it.each([
    [
      'the left hand, likelier',
      0.8,
      ['It was the left', 'It was the right', 'It was both'],
      ['left', 'right', 'together'],
    ],
    [
      'the right hand, likelier',
      0.3,
      ['It was the right', 'It was the left', 'It was both'],
      ['right', 'left', 'together'],
    ],
  ])('where the hand is not known: %s, comes first', (_, left, labels, hands) => {
    const { asked, ways } = meantBy(unsaid(left));
    expect(asked).toBe('Which hand is not known.');
    expect(ways.map(({ label }) => label)).toEqual(labels);
    expect(ways.map(({ choice }) => choice.hands)).toEqual(hands);
  });

  it('is answered by a hand alone where a hand is asked for', () => {
    expect(answeredBy(meantBy(unsaid(0.8)), 'right')).toMatchObject({ hands: 'right' });
    expect(answeredBy(meantBy(TOLD), 'right')).toBeNull();
    expect(answeredBy(meantBy({ ...told!, report: { ...told!.report, chosen: D } }), 'right')).toBeNull();
  });

  it('is what had been chosen, where another exercise was measured', () => {
    const { ways } = meantBy({ ...told!, report: { ...told!.report, chosen: D } });
    expect(ways).toEqual([{ label: 'No, I meant D major · scale, two octaves · right hand', choice: D }]);
  });

  it('is each of what comes nearest, where it was not recognised', () => {
    const nearest = [D, { ...D, key: 'G major' }, { ...D, octaves: 1 }];
    const assessment: Assessment = {
      kind: 'not-recognised',
      heard: told!.heard,
      reason: { notice: 'not-recognised' },
      nearest,
    };
    expect(meantBy(assessment).ways.map(({ choice }) => choice)).toEqual(nearest);
  });
});
