import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/index.ts';
import type { LiveNote } from '../../../src/ui/sitting/state/live-notes.ts';
import { drawLive, type LiveStringOptions } from '../../../src/ui/sitting/live-string.ts';

const ARPEGGIO = buildExercise({ key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 });
const SCALES = buildExercise({ key: 'C major', form: 'scale', hands: 'together', octaves: 4 });
const OPTIONS: LiveStringOptions = {
  widthPx: 900,
  heightPx: 420,
  exercise: ARPEGGIO,
  bpm: 80,
  nameOf: (midi) => `n${midi}`,
};
const note = (id: number, timeSec: number, midi = 60, final = true): LiveNote => ({
  id,
  timeSec,
  midi,
  levelDb: -20,
  final,
});
/** the exercise, struck evenly */
const played = (secPerStep: number, count = ARPEGGIO.steps.length): readonly LiveNote[] =>
  Array.from({ length: count }, (_, index) => note(index, 3 + index * secPerStep, 60 + index));

describe('the growing string', () => {
  it('is empty before anything sounded, with its string there', () => {
    const { pearls, rows } = drawLive([], OPTIONS);
    expect(pearls).toEqual([]);
    expect(rows).toHaveLength(1);
    expect(rows[0]!.x2).toBeGreaterThan(rows[0]!.x1);
  });

  it('begins at the left whenever the first note came', () => {
    const [first] = drawLive([note(0, 812.4)], OPTIONS).pearls;
    expect(first!.x).toBeLessThan(80);
    expect(first!.name).toBe('n60');
  });

  it('of even notes is even within a row', () => {
    const { pearls, rows } = drawLive(played(0.375), OPTIONS);
    const row = pearls.filter(({ y }) => y === rows[0]!.y).map(({ x }) => x);
    expect(row.length).toBeGreaterThan(5);
    const gaps = row.slice(1).map((x, index) => x - row[index]!);
    for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0]!, 6);
  });

  it('never moves a pearl that is drawn, as long as none leaves at the top', () => {
    const all = played(0.375);
    const final = new Map(drawLive(all, OPTIONS).pearls.map((pearl) => [pearl.id, pearl]));
    for (let count = 1; count < all.length; count += 1)
      for (const { id, x, y } of drawLive(all.slice(0, count), OPTIONS).pearls)
        expect([x, y]).toEqual([final.get(id)!.x, final.get(id)!.y]);
  });

  it('stands in its room at the tempo aimed at, however large the exercise and small the room', () => {
    for (const [exercise, widthPx, heightPx] of [
      [ARPEGGIO, 900, 420],
      [ARPEGGIO, 340, 500],
      [SCALES, 900, 420],
      [SCALES, 340, 560],
    ] as const) {
      const notes = exercise.steps.flatMap(({ beat, notes: keys }, step) =>
        keys.map(({ midi }, place) => note(step * 2 + place, 1 + beat * 0.75 + place * 0.01, midi)),
      );
      const { pearls } = drawLive(notes, { ...OPTIONS, exercise, widthPx, heightPx });
      expect(pearls).toHaveLength(notes.length);
      for (const { x, y, radius } of pearls) {
        expect(x - radius).toBeGreaterThanOrEqual(0);
        expect(x + radius).toBeLessThanOrEqual(widthPx);
        expect(y - radius).toBeGreaterThanOrEqual(0);
        expect(y + radius).toBeLessThanOrEqual(heightPx);
      }
    }
  });

  it('keeps to its room when somebody plays slower: the oldest rows leave at the top', () => {
    const { pearls, rows } = drawLive(played(1.4, 40), OPTIONS);
    expect(pearls.at(-1)!.id).toBe(39);
    expect(pearls[0]!.id).toBeGreaterThan(0);
    const all = [...rows, ...pearls];
    expect(Math.max(...all.map(({ y }) => y))).toBeLessThan(OPTIONS.heightPx);
  });

  it('draws a stop shorter than it was', () => {
    const before = [note(0, 1), note(1, 1.4)];
    const short = drawLive([...before, note(2, 4)], OPTIONS).pearls.at(-1)!;
    const long = drawLive([...before, note(2, 40)], OPTIONS).pearls.at(-1)!;
    expect(long.x).toBeCloseTo(short.x, 6);
    expect(long.y).toBe(short.y);
  });

  it('stacks what is struck together by pitch, without names', () => {
    const { pearls } = drawLive([note(0, 1, 67), note(1, 1.01, 60), note(2, 1.02, 64)], OPTIONS);
    const topDown = [...pearls].sort((a, b) => a.y - b.y);
    expect(topDown.map(({ id }) => id)).toEqual([0, 2, 1]);
    expect(pearls.every(({ name }) => name === '')).toBe(true);
  });

  it('runs on to its last pearl, chords too', () => {
    for (const keys of [[60], [60, 67], [60, 64, 67, 72]]) {
      const notes = [1, 1.5, 2].flatMap((sec, at) =>
        keys.map((midi, place) => note(at * 10 + place, sec + place * 0.002, midi)),
      );
      const { pearls, rows } = drawLive(notes, { ...OPTIONS, exercise: SCALES });
      expect(rows.at(-1)!.x2).toBeGreaterThan(Math.max(...pearls.map(({ x }) => x)));
    }
  });

  it('gives a guess no name: its key may yet be corrected', () => {
    expect(drawLive([note(0, 1, 60, false)], OPTIONS).pearls[0]).toMatchObject({ final: false, name: '' });
  });

  it('has a louder note larger, within bounds', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 0, noNaN: true }), (levelDb) => {
        const [soft, loud] = drawLive([note(0, 1), { ...note(1, 2), levelDb }], OPTIONS).pearls;
        if (levelDb > -20) expect(loud!.radius).toBeGreaterThanOrEqual(soft!.radius);
        else expect(loud!.radius).toBeLessThanOrEqual(soft!.radius);
        expect(loud!.radius / soft!.radius).toBeLessThan(3);
      }),
    );
  });
});
