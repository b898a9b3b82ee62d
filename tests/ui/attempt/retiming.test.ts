import { describe, expect, it } from 'vitest';
import { median } from '../../../src/engine/base/statistics.ts';
import { versionsOf } from '../../../src/ui/attempt/retiming.ts';
import { invent, INVENTED, type Invention } from '../support/invent.ts';

const versions = (made: Invention) => {
  const { report, exercise } = invent(made);
  return { ...versionsOf(report, exercise), report, exercise };
};

describe('even', () => {
  it('puts the steps of one hand at equal distances, at the attempt’s own tempo', () => {
    const { even, report, exercise } = versions(INVENTED.lateThumb);
    const heard = even!.attacks.map(({ toSec }) => toSec);
    expect(heard).toHaveLength(13);
    const iois = report.notes.slice(1).map(({ timeSec }, at) => timeSec - report.notes[at]!.timeSec);
    const stepSec = median(iois)!;
    expect(stepSec).toBeCloseTo(30 / 77, 2);
    exercise.steps.slice(1).forEach(({ step }) => {
      expect(heard[step]! - heard[0]!).toBeCloseTo(step * stepSec, 6);
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

  it('is not offered of two notes', () => {
    const { report, exercise } = invent(INVENTED.lateThumb);
    expect(versionsOf({ ...report, notes: report.notes.slice(0, 2) }, exercise).even).toBeNull();
  });
});

describe('without the late crossings', () => {
  /** Even but for the notes into steps 1 and 4; whether what follows is late with them. */
  const late = (forGood: boolean) => {
    const { report, exercise } = invent(INVENTED.lateThumb);
    const gone = (step: number): number => (step >= 4 ? 0.176 : step >= 1 ? 0.092 : 0);
    const alone = (step: number): number => ({ 1: 0.092, 4: 0.084 })[step] ?? 0;
    const notes = report.notes.map((note) => ({
      ...note,
      timeSec: 1 + note.step! * 0.4 + (forGood ? gone : alone)(note.step!),
    }));
    const { crossings, played } = versionsOf({ ...report, notes }, exercise);
    return played.attacks.map(({ toSec }, at) => Math.round(1000 * (toSec - crossings!.attacks[at]!.toSec)));
  };

  it('takes their delays away, and the time that was lost with them', () => {
    expect(late(true)).toEqual([0, 92, 92, 92, ...Array<number>(9).fill(176)]);
  });

  it('leaves notes that came in time where they are', () => {
    expect(late(false)).toEqual([0, 92, 0, 0, 84, ...Array<number>(8).fill(0)]);
  });

  it('is not offered where no crossing is late', () => {
    expect(versions(INVENTED.together).crossings).toBeNull();
  });
});
