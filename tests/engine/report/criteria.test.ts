import { describe, expect, it } from 'vitest';
import { DEFAULT_CRITERIA, evenAt, justNoticeableMs } from '../../../src/engine/index.ts';
import { tell } from './words/scenes.ts';

/** What counts as even, and from where on the whole is uneven, ms of SD at so many notes a second. */
function boundsMs(notesPerSec: number): { readonly even: number; readonly uneven: number } {
  const stepMs = 1000 / notesPerSec;
  const { evennessPercent, unevenPercent } = evenAt(DEFAULT_CRITERIA, stepMs);
  return { even: (evennessPercent / 100) * stepMs, uneven: (unevenPercent / 100) * stepMs };
}

describe('the bound of evenness', () => {
  it('refuses a scatter of 30 ms at one and a half notes a second', () => {
    expect(boundsMs(1.5).even).toBeLessThan(30);
  });

  it.each([10, 12, 14])('takes 6 ms at %i notes a second for even', (notesPerSec) => {
    expect(boundsMs(notesPerSec).even).toBeGreaterThan(6);
  });

  it('leaves room for trained pianists: 8 to 10 ms at intervals of 190 ms (memory, medium confidence)', () => {
    expect(boundsMs(1000 / 190).even).toBeGreaterThan(10);
  });

  it.each([1, 2, 4, 7, 10, 14])(
    'is 1.6 to 2.3 times what is just noticed, at %i notes a second',
    (notesPerSec) => {
      // Friberg & Sundberg 1995: 6 ms under 240 ms, 2.5 % above.
      const times = boundsMs(notesPerSec).even / justNoticeableMs(1000 / notesPerSec);
      expect(times).toBeGreaterThan(1.59);
      expect(times).toBeLessThan(2.31);
    },
  );

  it('is what somebody set at seven notes a second, and follows from there', () => {
    const set = { ...DEFAULT_CRITERIA, evennessPercent: 16 };
    expect(evenAt(set, 140).evennessPercent).toBeCloseTo(16, 9);
    expect(evenAt(set, 500).evennessPercent).toBeCloseTo(
      2 * evenAt(DEFAULT_CRITERIA, 500).evennessPercent,
      9,
    );
  });

  it('can be told for one tempo from that of another', () => {
    const twice = evenAt(evenAt(DEFAULT_CRITERIA, 500), 200);
    expect(twice.evennessPercent).toBeCloseTo(evenAt(DEFAULT_CRITERIA, 200).evennessPercent, 9);
  });

  it('stands in the report, for its tempo and by the criteria asked for', () => {
    const choice = { key: 'D major', form: 'scale', hands: 'right', octaves: 1 } as const;
    const boundOf = (bpm: number, criteria = DEFAULT_CRITERIA): number =>
      tell({ choice, bpm }, { criteria }).measures.evenUpToPercent!;
    // Two notes a beat.
    expect(boundOf(60)).toBeCloseTo(evenAt(DEFAULT_CRITERIA, 500).evennessPercent, 3);
    expect(boundOf(120)).toBeCloseTo(evenAt(DEFAULT_CRITERIA, 250).evennessPercent, 3);
    expect(boundOf(60, { ...DEFAULT_CRITERIA, evennessPercent: 4 })).toBeCloseTo(boundOf(60) / 2, 3);
  });

  it('that a teacher asked for holds at every tempo', () => {
    const asked = { ...DEFAULT_CRITERIA, evennessPercent: 8, evennessStepMs: null };
    expect(evenAt(asked, 700).evennessPercent).toBe(8);
  });
});
