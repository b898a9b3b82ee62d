import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_CRITERIA, timelineOf } from '../../../src/engine/index.ts';
import { sounded, threadPearls } from '../../../src/ui/plots/pearls/pearls.ts';
import { describeSpot } from '../../../src/ui/plots/pearls/describe.ts';
import { pearlRadius } from '../../../src/ui/plots/pearls/lanes.ts';
import { drawPearls } from '../../../src/ui/plots/pearls/picture.ts';
import { spotsOf, neighbourSpot, playRange, soundingAt } from '../../../src/ui/plots/pearls/spots.ts';
import type { DrawnText } from '../../../src/ui/plots/pearls/types.ts';
import { invent, INVENTED, type Invention } from '../support/invent.ts';

const draw = (made: Invention, widthPx: number) => {
  const { report, exercise } = invent(made);
  return drawPearls(report, exercise, {
    widthPx,
    markedSteps: new Set(report.words.steps),
    limits: DEFAULT_CRITERIA,
  });
};
const pearlsOf = (made: Invention) => {
  const { report, exercise } = invent(made);
  return threadPearls(report, exercise);
};
const WIDTHS = [280, 320, 358, 420, 600, 720, 944, 1080];
const spotsIn = (made: Invention) => {
  const { report, exercise } = invent(made);
  return spotsOf(report, exercise);
};
const ALL = Object.entries(INVENTED) as [string, Invention][];

describe('pearls', () => {
  it('stand for every expected and every extra note, in order of time', () => {
    const pearls = pearlsOf(INVENTED.together);
    expect(pearls).toHaveLength(15);
    expect(pearls.map((pearl) => pearl.kind).sort()).toEqual([
      ...Array<string>(1).fill('extra'),
      'missed',
      ...Array<string>(12).fill('struck'),
      'wrong',
    ]);
    expect(pearls.map((pearl) => pearl.timeSec)).toEqual(
      pearls.map((pearl) => pearl.timeSec).sort((a, b) => a - b),
    );
  });

  it('that did not sound stand on their ticks', () => {
    const made = { choice: INVENTED.lateThumb.choice, missed: [{ step: 6, hand: 'right' as const }] };
    const { report, exercise } = invent(made);
    const missed = pearlsOf(made).find((pearl) => pearl.step === 6)!;
    expect(missed.kind).toBe('missed');
    expect(missed.timeSec).toBe(timelineOf(report, exercise).tickSec.get(6));
    expect(sounded(missed)).toBe(false);
  });
});

const right = (step: number) => ({ step, hand: 'right' as const });
const both = (step: number) => [right(step), { step, hand: 'left' as const }];
/** What goes wrong goes wrong side by side. */
const SIDE_BY_SIDE: [string, Invention][] = [
  [
    'one hand, side by side',
    {
      choice: { key: 'Ab major', form: 'scale', hands: 'right', octaves: 2 },
      missed: [4, 5, 6, 10, 11].map(right),
      unsure: [16, 17, 18].map(right),
      wrong: [8, 9].map((step) => ({ ...right(step), midi: 73, name: 'C#5' })),
    },
  ],
  [
    'both hands, side by side',
    {
      choice: { key: 'Ab major', form: 'scale', hands: 'together', octaves: 2 },
      missed: [4, 5, 6].flatMap(both),
      unsure: [20, 21].flatMap(both),
      wrong: [9, 10].flatMap(both).map((place) => ({ ...place, midi: 61, name: 'C#4' })),
    },
  ],
];
/** Half of a letter's width may be air: measured on the widest font in use, 0.6 of its size a letter. */
const extentOf = ({ text, x, y, sizePx, anchor }: DrawnText) => {
  const width = 0.55 * sizePx * text.length;
  const x1 = x - width * { start: 0, middle: 0.5, end: 1 }[anchor];
  return { text, y, x1, x2: x1 + width };
};

describe('the picture', () => {
  it.each(ALL)('%s fits every width: no pearl, tick or name outside', (_, made) => {
    for (const widthPx of WIDTHS) {
      for (const row of draw(made, widthPx).rows) {
        for (const { pearls, labels } of row.spots) {
          for (const pearl of pearls) {
            expect(pearl.x - pearl.radius).toBeGreaterThanOrEqual(0);
            expect(pearl.x + pearl.radius).toBeLessThanOrEqual(widthPx);
            expect(pearl.y - pearl.radius).toBeGreaterThanOrEqual(0);
            expect(pearl.y + pearl.radius).toBeLessThanOrEqual(row.heightPx);
          }
          for (const label of labels) {
            expect(label.y - label.sizePx).toBeGreaterThanOrEqual(-4);
            expect(label.y).toBeLessThanOrEqual(row.heightPx);
          }
        }
      }
    }
  });

  it.each([...ALL, ...SIDE_BY_SIDE])('%s: no name or word runs into another', (_, made) => {
    for (const widthPx of WIDTHS)
      for (const row of draw(made, widthPx).rows) {
        const ofSpots = row.spots.flatMap((spot) => spot.labels);
        const ofThreads = row.threads.flatMap(({ label }) => (label === null ? [] : [label]));
        const labels = [...ofSpots, ...ofThreads].map(extentOf).sort((a, b) => a.x1 - b.x1);
        for (const [at, label] of labels.entries())
          for (const next of labels.slice(at + 1))
            if (next.x1 < label.x2)
              expect(Math.abs(next.y - label.y), `${label.text} ${next.text}`).toBeGreaterThan(9);
      }
  });

  it.each(ALL)('%s draws each spot in exactly one row, left to right', (_, made) => {
    for (const widthPx of WIDTHS) {
      const { rows, spots } = draw(made, widthPx);
      expect(rows.flatMap((row) => row.spots.map(({ spot }) => spot.index))).toEqual(
        spots.map((spot) => spot.index),
      );
      for (const row of rows)
        for (const hand of ['left', 'right']) {
          const xs = row.spots
            .filter(({ spot }) => spot.hand === hand && !spot.extra)
            .map(({ pearls }) => pearls[0]!.x);
          expect(xs).toEqual([...xs].sort((a, b) => a - b));
        }
    }
  });

  it('has one scale of time: equal waits are equally wide in every row', () => {
    const { rows, pxPerSec, drawnSec } = draw(INVENTED.longScale, 358);
    expect(rows.length).toBeGreaterThan(4);
    for (const row of rows) {
      const steps = row.spots.filter(({ spot }) => !spot.extra);
      for (let i = 1; i < steps.length; i += 1) {
        const [a, b] = [steps[i - 1]!, steps[i]!];
        const sec = drawnSec(b.spot.pearls[0]!.timeSec) - drawnSec(a.spot.pearls[0]!.timeSec);
        expect(b.pearls[0]!.x - a.pearls[0]!.x).toBeCloseTo(sec * pxPerSec, 6);
      }
    }
  });

  it('stays readable on a phone: in the narrowest column no two notes stand closer than 30 px', () => {
    for (const [, made] of ALL)
      for (const row of draw({ ...made, late: {} }, 320).rows)
        for (const hand of ['left', 'right']) {
          const xs = row.spots
            .filter(({ spot }) => spot.hand === hand && !spot.extra)
            .map(({ pearls }) => pearls[0]!.x);
          for (let i = 1; i < xs.length; i += 1) expect(xs[i]! - xs[i - 1]!).toBeGreaterThan(30);
        }
  });

  it('points out only the crossings that the report calls late', () => {
    const arches = draw(INVENTED.lateThumb, 1080).rows.flatMap((row) => row.arches);
    expect(arches.filter((arch) => arch.late).map((arch) => arch.step)).toEqual([1, 4]);
    expect(arches.find((arch) => arch.step === 1)?.label.text).toBe('+92\u202fms');
    expect(arches.find((arch) => arch.step === 9)?.label.text).toMatch(/^[+−]\d+$/);
  });

  it('ties the hands of each step that both were heard in, and points out those too far apart', () => {
    const threads = draw(INVENTED.together, 1080).rows.flatMap((row) => row.threads);
    expect(threads.map((thread) => thread.step)).toEqual([0, 1, 2, 3, 5, 6]);
    expect(threads.filter((thread) => thread.apart).map((thread) => thread.step)).toEqual([5, 6]);
    // The left hand came first: the lower end of the thread lies further left.
    expect(threads.at(-1)!.x2).toBeLessThan(threads.at(-1)!.x1);
  });

  it('hangs a wrong note below its string, and only that', () => {
    const pearls = draw(INVENTED.together, 1080).rows.flatMap((row) =>
      row.spots.flatMap((spot) => spot.pearls),
    );
    expect(pearls.filter((pearl) => pearl.tiedAtY !== null).map((pearl) => pearl.pearl.kind)).toEqual([
      'wrong',
    ]);
    const wrong = pearls.find((pearl) => pearl.tiedAtY !== null)!;
    expect(wrong.y).toBeGreaterThan(wrong.tiedAtY! + 30);
  });

  it('cuts a long stop short and says how long it was', () => {
    const cuts = draw(INVENTED.longScale, 1080).rows.flatMap((row) => row.cuts);
    expect(cuts.map((cut) => cut.label.text)).toEqual(['2.2\u202fs']);
  });

  it('draws nothing of nothing', () => {
    const { report, exercise } = invent(INVENTED.lateThumb);
    const empty = { ...report, notes: [], missed: [], unsure: [] };
    const picture = drawPearls(empty, exercise, {
      widthPx: 600,
      markedSteps: new Set<number>(),
      limits: DEFAULT_CRITERIA,
    });
    expect(picture.rows).toEqual([]);
  });

  it('can be drawn when only one note was heard', () => {
    const { report, exercise } = invent(INVENTED.lateThumb);
    const [only, ...others] = report.notes;
    const rest = others.map((note) => ({
      step: note.step!,
      midi: note.midi,
      name: note.name,
      hand: 'right' as const,
    }));
    const picture = drawPearls({ ...report, notes: [only!], missed: rest }, exercise, {
      widthPx: 358,
      markedSteps: new Set<number>(),
      limits: DEFAULT_CRITERIA,
    });
    expect(picture.rows.flatMap((row) => row.spots)).toHaveLength(13);
  });
});

it('a louder note is a larger pearl, up to a bound', () => {
  fc.assert(
    fc.property(fc.double({ min: -40, max: 40, noNaN: true }), fc.boolean(), (levelDb, inChord) => {
      expect(pearlRadius(levelDb + 1, 0, inChord)).toBeGreaterThanOrEqual(pearlRadius(levelDb, 0, inChord));
      expect(pearlRadius(levelDb, 0, inChord)).toBeGreaterThan(3);
    }),
  );
});

describe('spots', () => {
  const spots = spotsIn(INVENTED.together);

  it('play from the note before to the notes after, whatever the spot', () => {
    for (const spot of spots) {
      const { fromSec, toSec } = playRange(spots, spot);
      expect(fromSec).toBeLessThan(spot.timeSec);
      expect(toSec).toBeGreaterThan(spot.timeSec + 0.3);
    }
  });

  it('sound one a hand, from their onset on', () => {
    const third = spots.filter((spot) => spot.hand === 'right')[2]!;
    expect(soundingAt(spots, third.timeSec + 0.05).map((spot) => spot.step)).toEqual([2, 2]);
    expect(soundingAt(spots, 0)).toEqual([]);
    expect(soundingAt(spots, 99)).toEqual([]);
  });

  it('are reached by arrow keys: along the hand, and from hand to hand', () => {
    const first = spots.find((spot) => spot.hand === 'right')!;
    const second = neighbourSpot(spots, first, 'ArrowRight');
    expect([second.hand, second.step]).toEqual(['right', 1]);
    expect(neighbourSpot(spots, second, 'ArrowLeft')).toBe(first);
    expect(neighbourSpot(spots, first, 'ArrowLeft')).toBe(first);
    const below = neighbourSpot(spots, second, 'ArrowDown');
    expect([below.hand, below.step]).toEqual(['left', 1]);
    expect(neighbourSpot(spots, below, 'ArrowUp')).toBe(second);
    expect(neighbourSpot(spots, first, 'End').step).toBe(6);
    expect(neighbourSpot(spots, first, 'x')).toBe(first);
  });

  it('gather a chord of one hand', () => {
    const chords = spotsIn(INVENTED.progression);
    expect(chords).toHaveLength(5);
    expect(chords.map((spot) => spot.pearls.length)).toEqual([3, 3, 3, 3, 3]);
  });

  it('say what happened in words', () => {
    const { report } = invent(INVENTED.together);
    const words = spots.map((spot) => describeSpot(spot, report, true));
    expect(words).toContain('E 3 struck instead of F 3, fourth finger');
    expect(words.some((text) => text.startsWith('A 4 missed'))).toBe(true);
    expect(words).toContain('G 4 caught by the way');
    const late = invent(INVENTED.lateThumb);
    const lateSpots = spotsOf(late.report, late.exercise);
    expect(describeSpot(lateSpots[1]!, late.report, false)).toMatch(
      /^C, thumb; thumb under, 92\u202fms late/,
    );
  });
});
