import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RemarkPlace, Remark } from '../../../src/io/review/index.ts';
import { drawPins, PIN_RADIUS_PX, pinnedSpots } from '../../../src/ui/plots/pearls/pins.ts';
import { drawPearls } from '../../../src/ui/plots/pearls/picture.ts';
import { drawnOf } from '../../../src/ui/review/marks/drawn.ts';
import { marksOf, pinOf, pinsOf, spotOf } from '../../../src/ui/review/marks/marks.ts';
import { heardWords, placeWords } from '../../../src/ui/review/marks/words.ts';
import { madeUp } from '../../io/review/made-up.ts';

const [late, together] = madeUp().attempts.map((attempt) => ({ attempt, ...drawnOf(attempt) }));
const remarkAt = (id: string, place: RemarkPlace): Remark => ({ id, place, text: id, voice: null });
const LIMITS = { handsApartMs: 40, chordSpreadMs: 40 };
const pictureOf = ({ attempt, exercise }: NonNullable<typeof late>, widthPx: number) =>
  drawPearls(attempt.report, exercise, { widthPx, markedSteps: new Set(), limits: LIMITS });

describe('what is said of an attempt', () => {
  it('is read from the whole to the places, numbered along the string', () => {
    expect(late!.marks.map(({ number, remark }) => [number, remark?.id])).toEqual([
      [null, 'r3'],
      [1, 'r1'],
      [2, 'r2'],
    ]);
    expect(late!.marks.map(({ spot }) => spot?.step)).toEqual([undefined, 4, undefined]);
  });

  it('leaves a correction of the whole to the verdict, and numbers that of a note', () => {
    expect(late!.marks.filter(({ correction }) => correction !== null)).toEqual([]);
    expect(together!.marks).toMatchObject([
      { number: 1, correction: { verdict: 'correct' }, spot: { hand: 'left', step: 5 } },
    ]);
  });

  it('finds the note of the right hand by its key, and an extra one by its time', () => {
    const { spots, attempt } = together!;
    const right = attempt.report.notes.find(
      (note) => note.step === 5 && note.hand === 'right' && note.verdict !== 'extra',
    )!;
    expect(spotOf(spots, { kind: 'note', step: 5, midi: right.midi, timeSec: right.timeSec })?.hand).toBe(
      'right',
    );
    const extra = attempt.report.notes.find((note) => note.verdict === 'extra')!;
    expect(spotOf(spots, { kind: 'note', step: null, midi: extra.midi, timeSec: extra.timeSec })?.extra).toBe(
      true,
    );
    expect(spotOf(spots, { kind: 'attempt' })).toBeNull();
  });

  it('stays in the list where it is nowhere on the string', () => {
    const marks = marksOf(
      { remarks: [remarkAt('a', { kind: 'note', step: 999, midi: 1, timeSec: null })], corrections: [] },
      late!.spots,
    );
    expect(marks).toMatchObject([{ number: 1, spot: null }]);
    expect(pinOf(marks[0]!)).toBeNull();
  });

  it('is called by its place and by what was heard there', () => {
    expect(late!.marks.map((mark) => placeWords(mark, late!.exercise))).toEqual([
      'The whole attempt',
      'note 5, C5',
      'from A♭5 to A♭4, notes 7 to 10',
    ]);
    const [mark] = together!.marks;
    expect(placeWords(mark!, together!.exercise)).toBe('note 6, F3');
    expect(heardWords(mark!, together!.attempt.report)).toBe(
      'Evenfall heard: E struck instead of F, fourth finger.',
    );
  });
});

describe('marks over the string', () => {
  it('stand over their pearl, and a stretch reaches over its pearls', () => {
    const picture = pictureOf(late!, 1000);
    const [row] = picture.rows;
    const drawn = drawPins(row!, pinsOf(late!.marks), 'above');
    const pearl = row!.spots.find(({ spot }) => spot.step === 4)!.pearls[0]!;
    expect(drawn[0]!.x).toBeCloseTo(pearl.x, 6);
    expect(drawn[0]!.stem!.x).toBeCloseTo(pearl.x, 6);
    const inside = row!.spots
      .filter(({ spot }) => spot.step >= 6 && spot.step <= 9)
      .flatMap(({ pearls }) => pearls);
    expect(drawn[1]!.span!.x1).toBeLessThan(Math.min(...inside.map(({ x }) => x)));
    expect(drawn[1]!.span!.x2).toBeGreaterThan(Math.max(...inside.map(({ x }) => x)));
    expect(drawPins(row!, pinsOf(late!.marks), 'below')).toEqual([]);
  });

  it('of the lower hand stand under it', () => {
    const [row] = pictureOf(together!, 1000).rows;
    expect(drawPins(row!, pinsOf(together!.marks), 'above')).toEqual([]);
    const [pin] = drawPins(row!, pinsOf(together!.marks), 'below');
    expect(pin!.stem!.toY).toBeLessThan(PIN_RADIUS_PX);
  });

  it('of a stretch over two rows stand over both', () => {
    const picture = pictureOf(late!, 350);
    expect(picture.rows.length).toBeGreaterThan(1);
    const marks = marksOf(
      { remarks: [remarkAt('a', { kind: 'stretch', fromStep: 2, toStep: 10 })], corrections: [] },
      late!.spots,
    );
    expect(picture.rows.map((row) => drawPins(row, pinsOf(marks), 'above').length)).toEqual(
      picture.rows.map(() => 1),
    );
    expect(pinnedSpots(late!.spots, pinsOf(marks)[0]!).map(({ step }) => step)).toEqual([
      2, 3, 4, 5, 6, 7, 8, 9, 10,
    ]);
  });

  it('never lie over each other nor beyond the row, and each can be touched', () => {
    const steps = fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(steps, fc.constantFrom(350, 700, 1100), (at, widthPx) => {
        const remarks = at.map((step, index) =>
          remarkAt(`r${index}`, {
            kind: 'note',
            step,
            midi: late!.attempt.report.notes[step]!.midi,
            timeSec: null,
          }),
        );
        const pins = pinsOf(marksOf({ remarks, corrections: [] }, late!.spots));
        for (const row of pictureOf(late!, widthPx).rows) {
          const drawn = drawPins(row, pins, 'above');
          drawn.forEach(({ x, touch }, index) => {
            if (index > 0) expect(x - drawn[index - 1]!.x).toBeGreaterThanOrEqual(2 * PIN_RADIUS_PX);
            expect(x).toBeGreaterThanOrEqual(PIN_RADIUS_PX);
            expect(x).toBeLessThanOrEqual(widthPx - PIN_RADIUS_PX);
            expect(touch.width).toBeGreaterThanOrEqual(24);
          });
        }
        expect(pins.map(({ number }) => number)).toEqual(pins.map((_, index) => index + 1));
      }),
    );
  });
});
