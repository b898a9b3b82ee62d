import type { Hand } from '../../exercise/index.ts';
import { levelsAreCut } from '../../listen/index.ts';
import type { Heard, PianoProfile } from '../../listen/index.ts';
import type { Alignment } from '../../match/index.ts';
import { layInTime } from '../../timeline/index.ts';
import type { Criteria } from '../criteria/index.ts';
import type { Figure, Measures } from '../types.ts';
import { noteAccuracyPercent } from './accuracy.ts';
import { innerBalanceDb } from './balance.ts';
import { changeGapMs, changeHesitationRatio, chordChanges, slowestChange } from './changes.ts';
import type { SlowChange } from './changes.ts';
import { chordSpreadMs, chordSpreads, chordStrikes } from './chords.ts';
import type { ChordSpread } from './chords.ts';
import { crossingDelayMs, crossingDelays } from './crossings.ts';
import {
  deviationsOf,
  firstIntervalDeviationMs,
  lastIntervalDeviationMs,
  turnDeviationMs,
} from './deviations.ts';
import { driftPercent } from './drift.ts';
import type { HandLoudness } from './dynamics.ts';
import { endsFadeDb, endsOf } from './ends.ts';
import type { Ends } from './ends.ts';
import {
  evennessDriftRemovedPercent,
  evennessMs,
  evennessPercent,
  evennessWithoutCrossingsPercent,
} from './evenness.ts';
import { loudnessEvennessDb, loudnessOf, pianoStruck, thumbAccentDb } from './loudness.ts';
import { nPVIOf } from './npvi.ts';
import { shapeOfTime } from './shape.ts';
import { rhythmTakenOut } from './rhythm.ts';
import { intervalsOf, strikesBy } from './strikes.ts';
import type { Interval, Strike } from './strikes.ts';
import { notMeasured } from './estimate.ts';
import { togetherness } from './together.ts';
import { tempoBpm } from './tempo.ts';
import { joinsOf, touchMs } from './touch.ts';
import type { Join } from './touch.ts';

export { chordSpreadMs } from './chords.ts';
export { driftPercent, driftTempi } from './drift.ts';
export { accentDb, growthOf } from './growth.ts';
export { isMeasured } from './estimate.ts';
export { evennessDriftRemovedPercent, evennessPercent } from './evenness.ts';
export { shareOver, shareOverByFew, shareOverByOnset, sureOf, surelyOver, valueOf } from './sure.ts';
export { lineThrough } from './line.ts';
export { dynamicsOf, PATTERNS } from './dynamics.ts';
export type { Dynamics } from './dynamics.ts';
export { LEAST_WITH_SHAPE, shapeOfTime } from './shape.ts';
export type { Shape } from './shape.ts';
export type { Ends, ChordSpread, Interval, Join, SlowChange, Strike };

/** The figures and what they were taken from, for the words. */
export interface Measured {
  readonly measures: Measures;
  readonly strikes: readonly Strike[];
  readonly intervals: readonly Interval[];
  /** the same without those in which the playing stopped */
  readonly unbroken: readonly Interval[];
  readonly joins: readonly Join[];
  readonly spreads: readonly ChordSpread[];
  /** the strikes of each hand by itself */
  readonly byHand: readonly { readonly hand: Hand; readonly strikes: readonly Strike[] }[];
  /** each right note's level, by hand; none where the sound is cut off */
  readonly loudness: readonly HandLoudness[];
  readonly ends: Ends;
  readonly slowestChange: SlowChange | undefined;
}

/** What is known besides what was heard. */
interface Known {
  /** what other attempts taught of the keys; null: nothing */
  readonly piano?: PianoProfile | null;
  /** part of the sound was lost: of time nothing is known */
  readonly soundLost?: boolean;
  /** somebody said which hand played, so that fingers and crossings are known; by default it is so */
  readonly handKnown?: boolean;
  /** the pedal was held throughout, so that nothing is known of the touch; by default it was not */
  readonly pedalHeld?: boolean;
  /** when a key was struck again or the player went back, though that is not sure enough to be told */
  readonly perhapsAgainSec?: readonly number[];
}

/**
 * Alignment → every measure of README.md. Both hands: a step's onset is the mean of all its keys; crossings, chords and touch stay
 * each hand's own.
 */
export function measure(
  heard: Heard,
  alignment: Alignment,
  criteria: Criteria,
  { piano = null, soundLost = false, handKnown = true, pedalHeld = false, perhapsAgainSec = [] }: Known = {},
): Measured {
  const { exercise } = alignment;
  const hands = handsOf(alignment);
  const strikes = strikesBy(heard, alignment, null, perhapsAgainSec);
  const played = soundLost ? [] : intervalsOf(strikes, alignment, null);
  const intervals = rhythmTakenOut(played, exercise);
  const unbroken = intervals.filter(({ fromStep }) => !stoppedAfter(alignment).has(fromStep));
  const deviations = deviationsOf(played, layInTime(strikes, exercise));
  const byHand = hands.map((hand) => {
    const own = strikesBy(heard, alignment, hand, perhapsAgainSec);
    return {
      hand,
      strikes: own,
      intervals: soundLost ? [] : rhythmTakenOut(intervalsOf(own, alignment, hand), exercise),
    };
  });
  const cut = levelsAreCut(heard);
  const byLevel = (figure: () => Figure): Figure => (cut ? notMeasured({ notice: 'levels-cut' }) : figure());
  const struckPiano = cut ? null : pianoStruck(byHand, piano);
  const handLoudness = byHand.map(({ hand, strikes: own }) => ({
    hand,
    loudness: cut ? [] : loudnessOf(own, struckPiano),
  }));
  const loudness = handLoudness.flatMap((own) => own.loudness);
  const joins = byHand.flatMap((own) => joinsOf(own.strikes, own.intervals));
  const spreads = byHand.flatMap((own) => chordSpreads(own.strikes));
  const changes = chordChanges(strikes, intervals, exercise);
  const ends = endsOf(loudness, exercise);
  const stepsOf = (some: readonly Interval[]): ReadonlySet<number> => new Set(some.map(({ step }) => step));
  const apart = {
    stops: stepsOf(intervals.filter((interval) => !unbroken.includes(interval))),
    ending: stepsOf(shapeOfTime(unbroken, criteria).ending),
  };
  // An ending that was meant is told by itself, and counts in none of the figures of evenness.
  const steady = intervals.filter(({ step }) => !apart.ending.has(step));
  // They would lie elsewhere for the other hand.
  const crossings = handKnown
    ? byHand
        .flatMap((own) => crossingDelays(own.intervals, exercise, own.hand, criteria, apart))
        .sort((a, b) => a.step - b.step)
    : [];
  const byFinger = (figure: () => Figure): Figure =>
    handKnown ? figure() : notMeasured({ notice: 'hand-not-known' });
  return {
    strikes,
    intervals,
    unbroken,
    joins,
    spreads,
    byHand,
    loudness: handLoudness,
    ends,
    slowestChange: slowestChange(intervals, exercise),
    measures: {
      noteAccuracyPercent: noteAccuracyPercent(alignment),
      evennessPercent: evennessPercent(steady),
      evennessMs: evennessMs(steady),
      evennessDriftRemovedPercent: evennessDriftRemovedPercent(steady),
      evennessWithoutCrossingsPercent: byFinger(() => evennessWithoutCrossingsPercent(steady)),
      driftPercent: driftPercent(steady.filter((interval) => !interval.intoCrossing)),
      npvi: nPVIOf(steady),
      intervals: deviations,
      turnDeviationMs: turnDeviationMs(deviations, intervals, exercise),
      firstIntervalDeviationMs: firstIntervalDeviationMs(deviations, intervals),
      lastIntervalDeviationMs: lastIntervalDeviationMs(deviations, intervals, exercise),
      crossings,
      crossingDelayMs: byFinger(() => crossingDelayMs(crossings, exercise)),
      loudnessEvennessDb: byLevel(() => loudnessEvennessDb(loudness, struckPiano !== null)),
      thumbAccentDb: byFinger(() =>
        byLevel(() => thumbAccentDb(byHand.flatMap((own) => loudnessOf(own.strikes, null)))),
      ),
      ...(struckPiano !== null && { keysKnown: true as const }),
      endsFadeDb: byLevel(() => endsFadeDb(ends)),
      tempoBpm: tempoBpm(intervals),
      touchMs: touchMs(joins, strikes, pedalHeld),
      ...(pedalHeld && { pedalHeld: true as const }),
      chordSpreadMs: chordSpreadMs(spreads),
      chords: chordStrikes(spreads),
      innerBalanceDb: byLevel(() => innerBalanceDb(byHand, struckPiano)),
      ...(byHand.length === 2 && {
        togetherness: {
          ...togetherness(byHand[0]!.strikes, byHand[1]!.strikes),
          ...(cut && { leftLouderDb: notMeasured({ notice: 'levels-cut' }) }),
        },
      }),
      changeHesitationRatio: changeHesitationRatio(intervals, exercise),
      changes,
      changeGapMs: changeGapMs(changes, pedalHeld),
    },
  };
}

/** Steps after which the playing stopped. */
function stoppedAfter({ remarks }: Alignment): ReadonlySet<number> {
  return new Set(remarks.flatMap((remark) => (remark.kind === 'stopped' ? [remark.atStep] : [])));
}

function handsOf(alignment: Alignment): readonly Hand[] {
  const { hands } = alignment.exercise.choice;
  return hands === 'together' ? ['left', 'right'] : [hands];
}
