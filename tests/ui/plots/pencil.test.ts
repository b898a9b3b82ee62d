import { describe, expect, it } from 'vitest';
import { DEFAULT_CRITERIA } from '../../../src/engine/index.ts';
import { pencil, type StaffPlace } from '../../../src/ui/plots/staff/pencil.ts';
import { marksInWords, staffMarks } from '../../../src/ui/report/staff/marks.ts';
import { invent, INVENTED, type Invention } from '../support/invent.ts';

const marksOf = (made: Invention) => {
  const { report, exercise } = invent(made);
  return staffMarks(report, exercise, DEFAULT_CRITERIA);
};
/** Notes 30 px apart, as an engraver might set them. */
const places = (count: number): readonly StaffPlace[] =>
  (['right', 'left'] as const).flatMap((hand) =>
    Array.from({ length: count }, (_, step) => ({
      step,
      hand,
      x: 60 + 30 * step,
      headsY: hand === 'right' ? [100] : [220],
      topY: hand === 'right' ? 60 : 190,
      bottomY: hand === 'right' ? 120 : 250,
    })),
  );

describe('marks on the staff', () => {
  it('say what was struck, missed, extra, late and apart', () => {
    const kinds = marksOf(INVENTED.together).map(({ kind, step }) => `${kind} ${step}`);
    expect(kinds.sort()).toEqual(['apart 5', 'apart 6', 'extra 5', 'missed 4', 'wrong 5']);
    expect(marksOf(INVENTED.lateThumb).map(({ text }) => text.replace('\u202f', ' '))).toEqual([
      '+92 ms',
      '+84 ms',
    ]);
  });

  it('find the note of a chord, and the chord that is spread', () => {
    const marks = marksOf(INVENTED.progression);
    expect(marks.find(({ kind }) => kind === 'missed')).toMatchObject({ step: 1, note: 1 });
    expect(marks.find(({ kind }) => kind === 'wrong')).toMatchObject({ step: 3, note: 0, text: 'D♮' });
    expect(marks.filter(({ kind }) => kind === 'spread').map(({ step }) => step)).toEqual([1]);
  });

  it('are shapes of their own, so that they read without colour', () => {
    const drawn = pencil(marksOf(INVENTED.together), places(7));
    expect(drawn.rings.filter(({ broken }) => broken)).toHaveLength(1);
    expect(drawn.rings.filter(({ broken }) => !broken)).toHaveLength(1);
    expect(drawn.paths).toHaveLength(3);
  });

  it('never write one word over another', () => {
    const { texts } = pencil(
      Array.from({ length: 7 }, (_, step) => ({
        step,
        hand: 'right' as const,
        kind: 'extra' as const,
        note: 0,
        text: 'G caught',
      })),
      places(7),
    );
    for (const a of texts)
      for (const b of texts)
        if (a !== b && Math.abs(a.x - b.x) < 50) expect(Math.abs(a.y - b.y)).toBeGreaterThanOrEqual(14);
  });

  it('are said in words', () => {
    const { exercise } = invent(INVENTED.lateThumb);
    const said = marksInWords(marksOf(INVENTED.lateThumb), (step) => exercise.steps[step]!.notes[0]!.name);
    expect(said).toMatch(/^Marks on the staff: 2\. C4: \+92.*\.$/);
    expect(marksInWords([], () => '')).toBe('Marks on the staff: none.');
  });
});
