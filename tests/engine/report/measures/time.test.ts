import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ALL_KEYS, buildExercise } from '../../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../../src/engine/match/index.ts';
import { writeReport } from '../../../../src/engine/report/index.ts';
import { intervalsOf, strikesBy } from '../../../../src/engine/report/measures/strikes.ts';
import type { Report } from '../../../../src/engine/report/index.ts';
import { createRandom } from '../../../support/random.ts';
import { heardOf, played } from '../../match/simulated.ts';
import { playNotes } from '../words/scenes.ts';
import { ARPEGGIO, measuresOf, plusMinus, reportOf, value, withIntervals } from './series.ts';

const EVEN = Array.from({ length: 12 }, () => 400);
const someIntervals = fc.array(fc.double({ min: 250, max: 600, noNaN: true }), {
  minLength: 12,
  maxLength: 12,
});

/** Textbook coefficient of variation, per cent, with n − 1 (closed form). */
function coefficientOfVariation(values: readonly number[]): number {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  const squares = values.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  return (100 * Math.sqrt(squares / (values.length - 1))) / mean;
}

describe('evenness of time', () => {
  it('of equal intervals is 0', () => {
    const measures = measuresOf(EVEN);
    expect(value(measures.evennessPercent)).toBeCloseTo(0, 6);
    expect(value(measures.evennessMs)).toBeCloseTo(0, 6);
    expect(value(measures.npvi)).toBeCloseTo(0, 6);
    expect(value(measures.driftPercent)).toBeCloseTo(0, 6);
  });

  it('is the coefficient of variation of the intervals where the listener adds no noise', () => {
    fc.assert(
      fc.property(someIntervals, (iois) => {
        const measures = measuresOf(iois);
        expect(value(measures.evennessPercent)).toBeCloseTo(coefficientOfVariation(iois), 6);
      }),
      { numRuns: 50 },
    );
  });

  it.each([
    { blow: 'surely', confidence: 0.95, told: 1, intervals: 11, percent: 0 },
    { blow: 'perhaps', confidence: 0.5, told: 0, intervals: 11, percent: 0 },
    { blow: 'as near the first as only an echo is', confidence: 0.5, afterSec: 0.08, told: 0, intervals: 12 },
  ])(
    'of even playing in which a key is struck again $blow',
    ({ confidence, afterSec = 0.3, ...expected }) => {
      // The wait about it is the blow's, and would be 14 %.
      const notes = withIntervals(EVEN.map((ioi, at) => (at === 5 ? ioi + 200 : ioi)));
      const again = played(notes[5]!.timeSec + afterSec, notes[5]!.midi, { confidence });
      const report = reportOf([...notes, again]);
      const { evennessPercent, intervals, tempoBpm } = report.measures;
      expect(report.notes.filter(({ verdict }) => verdict === 'extra')).toHaveLength(expected.told);
      expect(intervals).toHaveLength(expected.intervals);
      expect(value(evennessPercent)).toBeCloseTo(expected.percent ?? 13.856, 2);
      expect(value(tempoBpm)).toBeCloseTo(75, 6);
      expect(report.perhapsAgainSec).toEqual(
        expected.told === 0 && afterSec === 0.3 ? [again.timeSec] : undefined,
      );
    },
  );

  it.each([
    { likely: 0.2, intervals: 11 },
    { likely: 0.05, intervals: 12 },
  ])(
    'leaves out what was struck again with a likelihood of $likely after both listenings: $intervals intervals',
    ({ likely, intervals }) => {
      const notes = withIntervals(EVEN);
      const { timeSec, midi } = notes[5]!;
      const heard = heardOf([...notes, played(timeSec + 0.2, midi)]);
      const alignment = matchNotes(heard, buildExercise(ARPEGGIO));
      const doubted = heard.notes.map((note) =>
        notes.includes(note) ? note : { ...note, confidence: likely },
      );
      const report = writeReport({ ...heard, notes: doubted }, alignment);
      expect(report.measures.intervals).toHaveLength(intervals);
    },
  );

  it('of so few that hardly any is free of what was perhaps struck again is none, and says so', () => {
    const notes = withIntervals(EVEN);
    const again = notes
      .slice(0, 9)
      .map(({ timeSec, midi }) => played(timeSec + 0.2, midi, { confidence: 0.5 }));
    const { evennessPercent, driftPercent } = reportOf([...notes, ...again]).measures;
    const none = { notice: { notice: 'needs-intervals', needed: 4, there: 3 } };
    expect(evennessPercent).toMatchObject(none);
    expect(driftPercent).toHaveProperty('notMeasured');
  });

  it('is the same at any tempo, and in ms it grows with it', () => {
    fc.assert(
      fc.property(someIntervals, fc.double({ min: 0.5, max: 2, noNaN: true }), (iois, times) => {
        const [once, scaled] = [measuresOf(iois), measuresOf(iois.map((ioi) => ioi * times))];
        expect(value(scaled.evennessPercent)).toBeCloseTo(value(once.evennessPercent), 6);
        expect(value(scaled.npvi)).toBeCloseTo(value(once.npvi), 6);
        expect(value(scaled.driftPercent)).toBeCloseTo(value(once.driftPercent), 6);
        expect(value(scaled.evennessMs)).toBeCloseTo(times * value(once.evennessMs), 6);
        const { evennessMs, evennessPercent } = measuresOf(iois, { onsetSdMs: 2 });
        expect(plusMinus(evennessMs) * value(evennessPercent)).toBeCloseTo(
          value(evennessMs) * plusMinus(evennessPercent),
          6,
        );
      }),
      { numRuns: 30 },
    );
  });

  it('has the listener’s timing noise taken out, and a ± that covers what is left, on the average of 400 hearings', () => {
    const random = createRandom(3);
    const iois = EVEN.map((ioi, index) => ioi + [0, 18, -7, 11, -22, 5, 9, -14, 3, 20, -16, -7][index]!);
    const truth = coefficientOfVariation(iois);
    const sdMs = 5;
    const heard = Array.from({ length: 400 }, () => {
      const notes = withIntervals(iois).map((note) => ({
        ...note,
        timeSec: note.timeSec + random.normal(sdMs) / 1000,
      }));
      return reportOf(notes, { onsetSdMs: sdMs }).measures.evennessPercent;
    });
    const values = heard.map(value);
    const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
    const spread = Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / values.length);
    const said = heard.map(plusMinus).reduce((sum, one) => sum + one, 0) / heard.length;
    expect(mean).toBeCloseTo(truth, 0.3);
    expect(Math.abs(mean - truth)).toBeLessThan(0.25);
    expect(said / spread).toBeGreaterThan(0.8);
    expect(said / spread).toBeLessThan(1.25);
  });

  it('without the crossings leaves their intervals out', () => {
    // C arpeggio, right hand: the thumb goes under into step 3 and 3 goes over into step 9 or so: those two alone are late.
    const crossings = reportOf(withIntervals(EVEN)).measures.crossings.map((crossing) => crossing.step);
    expect(crossings.length).toBeGreaterThan(0);
    const late = EVEN.map((ioi, index) => (crossings.includes(index + 1) ? ioi + 100 : ioi));
    const measures = measuresOf(late);
    expect(value(measures.evennessPercent)).toBeGreaterThan(5);
    expect(value(measures.evennessWithoutCrossingsPercent)).toBeCloseTo(0, 6);
  });

  it('needs four intervals, and says so', () => {
    const notes = withIntervals(EVEN).slice(0, 4);
    expect(reportOf(notes).measures.evennessPercent).toMatchObject({
      notMeasured: 'needs 4 unbroken intervals between steps; there are 3',
    });
  });
});

describe('drift', () => {
  it('of intervals that grow along a line from 400 to 500 ms is 25 %, and evenness without it is 0', () => {
    const measures = measuresOf(EVEN.map((ioi, index) => ioi + (100 * index) / 11));
    expect(value(measures.driftPercent)).toBeCloseTo(25, 6);
    expect(value(measures.evennessDriftRemovedPercent)).toBeCloseTo(0, 6);
    expect(value(measures.evennessPercent)).toBeGreaterThan(5);
  });

  it('is negative where the player rushes', () => {
    expect(value(measuresOf(EVEN.map((ioi, index) => ioi - 5 * index)).driftPercent)).toBeLessThan(0);
  });
});

describe('tempo', () => {
  it('of two notes a beat, 375 ms apart, is 80 beats a minute, whatever one long interval does', () => {
    const iois = Array.from({ length: 12 }, (_, index) => (index === 5 ? 900 : 375));
    expect(value(measuresOf(iois).tempoBpm)).toBeCloseTo(80, 6);
  });
});

describe('single intervals', () => {
  it('are told against the median, audible above the just-noticeable difference', () => {
    const iois = [...EVEN];
    iois[4] = 409; // 2.5 % of 400 ms is 10 ms (Friberg & Sundberg 1995)
    iois[7] = 412;
    const { intervals } = measuresOf(iois);
    expect(intervals).toHaveLength(12);
    expect(intervals[4]).toMatchObject({ step: 5, deviationMs: expect.closeTo(9, 6), audible: false });
    expect(intervals[7]).toMatchObject({ step: 8, deviationMs: expect.closeTo(12, 6), audible: true });
  });

  it('are not called audible within twice the listener’s own noise', () => {
    const iois = [...EVEN];
    iois[7] = 412;
    expect(measuresOf(iois, { onsetSdMs: 5 }).intervals[7]!.audible).toBe(false);
  });

  it('at the turn, first and last are told by themselves', () => {
    const iois = [...EVEN];
    iois[0] = 430;
    iois[6] = 520;
    iois[11] = 460;
    const measures = measuresOf(iois);
    expect(value(measures.firstIntervalDeviationMs)).toBeCloseTo(30, 6);
    expect(value(measures.turnDeviationMs)).toBeCloseTo(120, 6);
    expect(value(measures.lastIntervalDeviationMs)).toBeCloseTo(60, 6);
  });

  it('leave out those beside a missed note and those over a repeat or a going back', () => {
    const notes = withIntervals(EVEN);
    const missed = notes.filter((_, step) => step !== 5);
    expect(reportOf(missed).measures.intervals.map(({ step }) => step)).toEqual([
      1, 2, 3, 4, 7, 8, 9, 10, 11, 12,
    ]);
    const repeated = notes.flatMap((note, step) =>
      step < 5
        ? [note]
        : step > 5
          ? [{ ...note, timeSec: note.timeSec + 0.3 }]
          : [note, { ...note, timeSec: note.timeSec + 0.3 }],
    );
    expect(reportOf(repeated).measures.intervals.map(({ step }) => step)).toEqual([
      1, 2, 3, 4, 5, 7, 8, 9, 10, 11, 12,
    ]);
  });
});

describe('intervals of one of two hands', () => {
  // D major: the right thumb goes under to G and 3 over it to F♯ coming down; the left 3 goes over to B and the thumb under to A coming
  // down (the usual fingering of scale manuals, from memory).
  it.each([
    ['right', [3, 12]],
    ['left', [5, 10]],
  ] as const)('lead into crossings of that hand alone: %s', (hand, steps) => {
    const choice = { key: 'D major', form: 'scale', hands: 'together', octaves: 1 } as const;
    const heard = heardOf(playNotes({ choice }));
    const alignment = matchNotes(heard, buildExercise(choice));
    const intervals = intervalsOf(strikesBy(heard, alignment, hand, []), alignment, hand);
    expect(intervals.length).toBe(14);
    expect(intervals.filter(({ intoCrossing }) => intoCrossing).map(({ step }) => step)).toEqual(steps);
  });
});

describe('crossing delay', () => {
  const steps = reportOf(withIntervals(EVEN)).measures.crossings;

  it('is 0 in even playing, and every crossing is named by kind and direction', () => {
    expect(steps.map(({ kind, direction }) => `${kind} ${direction}`)).toEqual([
      'thumb-under up',
      'over-thumb down',
    ]);
    for (const crossing of steps) {
      expect(crossing.delayMs).toBeCloseTo(0, 6);
      expect(crossing.ratio).toBeCloseTo(1, 6);
      expect(crossing.late).toBe(false);
    }
  });

  it('is the interval into it less the median of its neighbours', () => {
    const at = steps[0]!.step - 1;
    const iois = EVEN.map((ioi, index) => (index === at ? 492 : ioi));
    const [late, other] = measuresOf(iois, { onsetSdMs: 2 }).crossings;
    expect(late).toMatchObject({
      delayMs: expect.closeTo(92, 6),
      ratio: expect.closeTo(1.23, 6),
      late: true,
    });
    expect(late!.plusMinusMs).toBeCloseTo(0.8 * Math.sqrt(8 * (1 + 0.25 + Math.PI / 8)), 6);
    expect(other!.late).toBe(false);
  });

  it('is not called late within the scatter of the other intervals', () => {
    const at = steps[0]!.step - 1;
    const iois = EVEN.map((ioi, index) => (index === at ? 450 : ioi + (index % 2 === 0 ? 30 : -30)));
    expect(measuresOf(iois).crossings[0]!.late).toBe(false);
  });
});

describe('crossing delay with both hands', () => {
  const jitter = createRandom(11);
  /** Both hands; at every crossing of either both wait 120 ms for the thumb. */
  const waiting = (choice: ExerciseChoice): Report => {
    let timeSec = 1;
    const notes = buildExercise(choice).steps.flatMap(({ crossings, notes: keys }) => {
      timeSec += 0.4 + (crossings.length > 0 ? 0.12 : 0);
      return keys.map(({ midi }) => played(timeSec + jitter.normal(0.006), midi));
    });
    return reportOf(notes, { onsetSdMs: 2 }, choice);
  };

  it.each([
    ['scale', 1],
    ['scale', 2],
    ['arpeggio', 1],
    ['arpeggio', 2],
  ] as const)(
    'calls late each crossing that the step waited for: %s, %i octaves, all keys',
    (form, octaves) => {
      const crossings = ALL_KEYS.flatMap(
        (key) => waiting({ key, form, hands: 'together', octaves }).measures.crossings,
      );
      const late = crossings.filter((crossing) => crossing.late);
      expect(crossings.length).toBeGreaterThan(30);
      expect(late.length).toBe(crossings.length);
    },
  );
});
