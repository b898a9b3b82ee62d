import { describe, expect, it } from 'vitest';
import { DEFAULT_CRITERIA } from '../../../src/engine/index.ts';
import { widthPx } from '../../../src/ui/plots/pearls/labels.ts';
import { drawPearls } from '../../../src/ui/plots/pearls/picture.ts';
import type { DrawnText } from '../../../src/ui/plots/pearls/types.ts';
import { invent } from '../support/invent.ts';

/** Where a text begins and ends, px. */
function span(label: DrawnText): readonly [number, number] {
  const left = label.x - widthPx(label) * { start: 0, middle: 0.5, end: 1 }[label.anchor];
  return [left, left + widthPx(label)];
}

/** Texts that lie over each other: on one line, to less than half the size of their letters. */
function overlaps(labels: readonly DrawnText[]): readonly string[] {
  return labels.flatMap((one, at) =>
    labels.slice(at + 1).flatMap((other) => {
      const onOneLine = Math.abs(one.y - other.y) < Math.min(one.sizePx, other.sizePx) / 2;
      const [[a1, a2], [b1, b2]] = [span(one), span(other)];
      return onOneLine && a1 < b2 && b1 < a2 ? [`${one.text} | ${other.text}`] : [];
    }),
  );
}

const { exercise, report } = invent({
  choice: { key: 'E major', form: 'progression', hands: 'together', octaves: 1 },
  tempoBpm: 58,
  spreadMs: { 0: 46, 1: 47, 3: 45, 4: 53 },
  wrong: [
    { step: 2, hand: 'right', note: 2, midi: 72, name: 'C5' },
    { step: 3, hand: 'left', note: 0, midi: 51, name: 'D#3' },
  ],
  missed: [
    { step: 1, hand: 'right', note: 1 },
    { step: 2, hand: 'left', note: 1 },
  ],
});

describe('the words of chords', () => {
  it.each([320, 358, 390, 700, 1000])('lie over no others in a string %d px wide', (width) => {
    const { rows } = drawPearls(report, exercise, {
      widthPx: width,
      markedSteps: new Set<number>(),
      limits: DEFAULT_CRITERIA,
    });
    for (const row of rows) {
      const labels = [...row.spots.flatMap((spot) => spot.labels), ...row.words];
      expect(labels.length).toBeGreaterThan(10);
      expect(overlaps(labels)).toEqual([]);
    }
  });
});
