import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/index.ts';
import { fittedPearls, musicBeside, musicScale, textSizePx } from '../../../src/ui/sitting/sizes.ts';
import { invent, INVENTED } from '../support/invent.ts';

const BOX = { widthPx: 900, heightPx: 260, leastPx: 20, mostPx: 76 };

describe('the size of a text', () => {
  it('is the largest that may be where there is room', () => {
    expect(textSizePx('Even.', BOX)).toBe(76);
  });

  it('is smaller the longer the text and the smaller the box', () => {
    const text = 'Every note right. The thumb comes late going up to C, both times; the rest is even.';
    const wide = textSizePx(text, BOX);
    expect(wide).toBeGreaterThan(40);
    expect(textSizePx(text, { ...BOX, widthPx: 340 })).toBeLessThan(wide);
    expect(textSizePx(text + text, BOX)).toBeLessThan(wide);
  });

  it('breaks no word', () => {
    // 20 letters of 0.56 of the size each must fit into 200 px: 17 px, below the least of 20
    expect(textSizePx('m'.repeat(20), { ...BOX, widthPx: 200 })).toBe(20);
    expect(textSizePx('m'.repeat(20), { ...BOX, widthPx: 300 })).toBe(26);
  });

  it('never falls below what is read', () => {
    expect(textSizePx('word '.repeat(500), BOX)).toBe(20);
  });
});

describe("the report's string", () => {
  const { report, exercise } = invent(INVENTED.lateThumb);
  const heightOf = (fitted: ReturnType<typeof fittedPearls>): number =>
    fitted.scale * fitted.picture.rows.reduce((sum, row) => sum + row.heightPx + 14, -14);

  it.each([
    [940, 240],
    [342, 420],
    [1300, 400],
    [700, 600],
  ])('fills a room of %i × %i as far as it can', (widthPx, heightPx) => {
    const fitted = fittedPearls(report, exercise, { widthPx, heightPx });
    expect(heightOf(fitted)).toBeLessThanOrEqual(heightPx);
    expect(fitted.scale).toBeGreaterThan(0.6);
  });

  it('is drawn as small as it can be read where the room is smaller than that', () => {
    expect(fittedPearls(report, exercise, { widthPx: 300, heightPx: 40 }).scale).toBe(0.6);
  });
});

describe('the music', () => {
  const short = buildExercise({ key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 });
  const long = buildExercise({ key: 'Ab major', form: 'scale', hands: 'together', octaves: 4 });

  it('is large where there is room, and small enough to stand whole', () => {
    expect(musicScale(short, 4, { widthPx: 1300, heightPx: 600 })).toBe(1.9);
    expect(musicScale(short, 4, { widthPx: 760, heightPx: 200 })).toBeLessThan(1.4);
    const scale = musicScale(long, 4, { widthPx: 940, heightPx: 420 });
    expect(scale).toBeLessThan(1);
    expect(scale).toBeGreaterThan(0.4);
  });

  it('stands beside the growing string where both have room, and never in its way', () => {
    for (const box of [
      { widthPx: 342, heightPx: 560 },
      { widthPx: 700, heightPx: 760 },
      { widthPx: 1340, heightPx: 640 },
    ])
      expect(musicBeside(short, 4, box), `${box.widthPx}`).toBeGreaterThan(0.5);
    expect(musicBeside(short, 4, { widthPx: 760, heightPx: 200 })).toBeNull();
    expect(musicBeside(long, 4, { widthPx: 342, heightPx: 480 })).toBeNull();
  });
});
