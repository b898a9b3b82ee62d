import { describe, expect, it } from 'vitest';
import { DEFAULT_CRITERIA } from '../../../src/engine/index.ts';
import { drawGraph } from '../../../src/ui/plots/graph/graph.ts';
import type { GraphFigure } from '../../../src/ui/plots/graph/types.ts';
import { spotsOf } from '../../../src/ui/plots/pearls/spots.ts';
import { handsFigure, spreadFigure } from '../../../src/ui/report/detail/hands.ts';
import { placesOf } from '../../../src/ui/report/detail/places.ts';
import { loudnessFigure } from '../../../src/ui/report/detail/sound.ts';
import { tempoFigure, timingFigure } from '../../../src/ui/report/detail/timing.ts';
import { invent, INVENTED, type Invention } from '../support/invent.ts';

function figuresOf(made: Invention) {
  const { report, exercise } = invent(made);
  const spots = spotsOf(report, exercise);
  const places = placesOf(exercise, spots);
  const all = {
    timing: timingFigure(report, exercise, places),
    tempo: tempoFigure(report, exercise, places),
    loudness: loudnessFigure(report, places),
    hands: handsFigure(report, places, DEFAULT_CRITERIA),
    spread: spreadFigure(report, places, DEFAULT_CRITERIA),
  };
  return { ...all, report, exercise, spots };
}
const ALL = Object.entries(INVENTED) as [string, Invention][];
const drawnFigures = (made: Invention): readonly GraphFigure[] => {
  const { timing, tempo, loudness, hands, spread } = figuresOf(made);
  return [timing, tempo, loudness, hands, spread].filter((figure) => figure !== null);
};

describe('the figures of the detail', () => {
  it('show each note against its even place, with the audible threshold as a band', () => {
    const { timing } = figuresOf(INVENTED.lateThumb);
    expect(timing.points).toHaveLength(12);
    expect(timing.points.filter((point) => point.look).map((point) => point.step)).toEqual([1, 4]);
    // 77 beats a minute, two notes a beat: 390 ms, and 2.5 % of it (Friberg & Sundberg 1995).
    expect(timing.band!.to).toBeCloseTo(0.025 * (30_000 / 77), 6);
  });

  it('show the tempo over each beat: a late note slows the beat that it ends', () => {
    const { tempo } = figuresOf(INVENTED.lateThumb);
    const slow = tempo!.points.find((point) => point.step === 2)!;
    expect(slow.value).toBeCloseTo(60_000 / (60_000 / 77 + 92), 6);
    expect(tempo!.points.find((point) => point.step === 8)!.value).toBeCloseTo(77, 6);
  });

  it('show the hands apart only where there are two, and chords only where there are some', () => {
    expect(figuresOf(INVENTED.lateThumb).hands).toBeNull();
    expect(figuresOf(INVENTED.lateThumb).spread).toBeNull();
    const both = figuresOf(INVENTED.togetherProgression);
    expect(both.hands!.points.filter((point) => point.look).map((point) => point.step)).toEqual([3]);
    expect(both.spread!.points).toHaveLength(10);
    expect(both.spread!.points.filter((point) => point.look).map(({ hand }) => hand)).toEqual([
      'left',
      'right',
    ]);
  });

  it('show loudness without the slope over pitch: a steady rise is no unevenness', () => {
    const { report, exercise, spots } = figuresOf(INVENTED.longScale);
    const notes = report.notes.map((note) => ({ ...note, levelDb: -30 + 0.2 * note.midi }));
    const figure = loudnessFigure({ ...report, notes }, placesOf(exercise, spots))!;
    for (const point of figure.points) expect(point.value).toBeCloseTo(0, 6);
  });

  it.each(ALL)('of %s each point is a spot of the string at the same step', (_, made) => {
    const { spots } = figuresOf(made);
    for (const figure of drawnFigures(made))
      for (const point of figure.points)
        if (point.spot !== null) expect(spots[point.spot]!.step).toBe(point.step);
  });
});

describe('a figure drawn', () => {
  it.each(ALL)('of %s fits every width: no point outside, each in exactly one row', (_, made) => {
    for (const figure of drawnFigures(made))
      for (const widthPx of [280, 358, 720, 1080]) {
        const { rows, heightPx } = drawGraph(figure, widthPx);
        const points = rows.flatMap((row) => row.points);
        expect(points.map(({ index }) => index).sort((a, b) => a - b)).toEqual(
          figure.points.map((_, index) => index),
        );
        for (const { x, y } of points) {
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(widthPx);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(heightPx);
        }
      }
  });

  it('has one scale in all rows, and its base where values are nothing', () => {
    const { timing } = figuresOf(INVENTED.longScale);
    const { rows } = drawGraph(timing, 358);
    expect(rows.length).toBeGreaterThan(2);
    expect(new Set(rows.map((row) => row.baseY)).size).toBe(1);
    for (const { point, y, baseY } of rows.flatMap((row) => row.points))
      if (point.value === 0) expect(y).toBeCloseTo(baseY, 6);
  });

  it('is empty of nothing', () => {
    const { timing } = figuresOf(INVENTED.lateThumb);
    expect(drawGraph({ ...timing, points: [] }, 600).rows).toEqual([]);
  });
});
