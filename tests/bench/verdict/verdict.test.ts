import { describe, expect, it } from 'vitest';
import { SITUATIONS } from '../../../src/engine/report/words/index.ts';
import { ROUND_LENGTH, seriesAttempt, verdictAttempt } from './attempts.ts';
import { kindOf } from './kinds.ts';
import { SCENARIOS } from './scenarios.ts';
import { truthOf } from './truth.ts';
import { trueMeasures } from '../truth-report.ts';

describe('the bench of verdicts', () => {
  it('knows what every situation accuses of', () => {
    expect(SITUATIONS.length).toBeGreaterThan(20);
    for (const name of SITUATIONS) expect(kindOf(name), name).not.toBeUndefined();
  });

  it('has as many players at fault as innocent ones, about', () => {
    const innocent = SCENARIOS.filter(({ gravest }) => gravest === null);
    const share = innocent.reduce((sum, { weight }) => sum + weight, 0) / ROUND_LENGTH;
    expect(share).toBeGreaterThan(0.4);
    expect(share).toBeLessThan(0.6);
  });

  it('plays evenly those who are said to', () => {
    const even = Array.from({ length: ROUND_LENGTH }, (_, index) => verdictAttempt(index, 'notes')).filter(
      ({ scenario }) => scenario.name.endsWith('hand, as written'),
    );
    expect(even.length).toBeGreaterThan(5);
    for (const { played } of even) {
      const { evennessMs, evennessPercent } = trueMeasures(truthOf(played[0]!));
      if ('notMeasured' in evennessMs || 'notMeasured' in evennessPercent) throw new Error('not measured');
      const ioiMs = (100 * evennessMs.value) / evennessPercent.value;
      expect(evennessMs.value).toBeLessThan(Math.hypot(10, 0.04 * ioiMs));
    }
  });

  it('plays the faults that its players are said to have, and no others', () => {
    for (let index = 0; index < ROUND_LENGTH; index++) {
      const { scenario, played } = verdictAttempt(index, 'notes');
      const truth = truthOf(played[0]!);
      const faults =
        truth.notes.filter(({ verdict }) => verdict !== 'correct').length +
        truth.missed.filter(({ why }) => why === 'left-out').length;
      if (scenario.gravest === 'notes') expect(faults, scenario.name).toBeGreaterThan(0);
      if (scenario.gravest === null) expect(faults, scenario.name).toBe(0);
    }
  });

  it('makes each number the same attempt always', () => {
    expect(verdictAttempt(17, 'notes')).toEqual(verdictAttempt(17, 'notes'));
    expect(seriesAttempt(2).played).toHaveLength(4);
  });
});
