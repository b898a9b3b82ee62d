import { describe, expect, it } from 'vitest';
import { versionsOf } from '../../../src/ui/attempt/retiming.ts';
import { invent, INVENTED, type Invention } from '../support/invent.ts';

const versions = (made: Invention) => {
  const { report, exercise } = invent(made);
  return { ...versionsOf(report, exercise), report, exercise };
};

describe('even', () => {
  it('puts the steps of one hand at equal distances, at the attempt’s own tempo', () => {
    const { even, exercise } = versions(INVENTED.lateThumb);
    const heard = even!.attacks.map(({ toSec }) => toSec);
    expect(heard).toHaveLength(13);
    exercise.steps.slice(1).forEach(({ step, beat }) => {
      expect(heard[step]! - heard[0]!).toBeCloseTo((beat * 60) / 77, 6);
    });
  });

  it('moves what was struck together together: hands and chords stay as they were', () => {
    const { even, report } = versions(INVENTED.togetherProgression);
    expect(even!.attacks).toHaveLength(5);
    for (const { fromSec, lastSec } of even!.attacks) {
      const inside = report.notes.filter(({ timeSec }) => timeSec >= fromSec && timeSec <= lastSec);
      expect(inside.length).toBeGreaterThan(4);
    }
  });

  it('shortens a stop to the time of a step', () => {
    const { even } = versions(INVENTED.longScale);
    const gaps = even!.attacks.slice(1).map(({ toSec }, at) => toSec - even!.attacks[at]!.toSec);
    expect(Math.max(...gaps)).toBeLessThan(2 * (60 / 92));
  });

  it('keeps extra notes between the steps between which they sounded', () => {
    const { even } = versions(INVENTED.longScale);
    const heard = even!.attacks.map(({ toSec }) => toSec);
    expect(heard).toEqual([...heard].sort((a, b) => a - b));
  });

  it('is not offered where there is no tempo to go by', () => {
    const { report, exercise } = invent(INVENTED.lateThumb);
    const measures = { ...report.measures, tempoBpm: { notMeasured: 'too few' } };
    expect(versionsOf({ ...report, measures }, exercise).even).toBeNull();
  });
});

describe('without the late crossings', () => {
  it('takes only their delays away', () => {
    const { crossings, played } = versions(INVENTED.lateThumb);
    const gainMs = played.attacks.map(({ toSec }, at) => 1000 * (toSec - crossings!.attacks[at]!.toSec));
    expect(gainMs.map(Math.round)).toEqual([0, 92, 92, 92, ...Array<number>(9).fill(176)]);
  });

  it('is not offered where no crossing is late', () => {
    expect(versions(INVENTED.together).crossings).toBeNull();
  });
});
