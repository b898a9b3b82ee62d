import { median } from '../../base/statistics.ts';
import type { Exercise } from '../../exercise/index.ts';
import type { ChordChange, Figure } from '../types.ts';
import { isMeasured, notMeasured } from './estimate.ts';
import { MEAN_RANGE } from './noise.ts';
import type { Interval, Strike } from './strikes.ts';

/**
 * Error of one damping as the listener hears it, one standard deviation, ms: of 1735 dampings in 240 rendered attempts of
 * chords the middle half lay from 7 ms early to 41 ms late; one in ten was far too early.
 */
const RELEASE_SD_MS = 36;

/**
 * Strikes and intervals of all keys → the changes of chord. Gap: from the release of the last key of one chord to the first
 * onset of the next, ms; the damping of every key of the chord must be heard, since any of them may be the last.
 */
export function chordChanges(
  strikes: readonly Strike[],
  intervals: readonly Interval[],
  exercise: Exercise,
): readonly ChordChange[] {
  const changes = intervals.filter((interval) => isChord(exercise, interval.step));
  return changes.map((change) => {
    const others = changes.filter((one) => one !== change).map((one) => one.perBeatMs);
    const [from, to] = [change.fromStep, change.step].map((step) =>
      strikes.find((one) => one.step === step)!,
    );
    return {
      step: change.step,
      ratio: change.perBeatMs / (median(others) ?? change.perBeatMs),
      gapMs: gapBetween(from!, to!),
    };
  });
}

function gapBetween(from: Strike, to: Strike): Figure {
  const releases = from.notes.flatMap(({ played }) => played.releaseSec ?? []);
  if (releases.length < from.notes.length)
    return notMeasured({ notice: 'damping-not-heard', of: 'this-chord' });
  const firstSec = Math.min(...to.notes.map(({ played }) => played.timeSec));
  return { value: 1000 * (firstSec - Math.max(...releases)), plusMinus: RELEASE_SD_MS };
}

/** Median gap of the changes, ms; ± from the dampings as they are heard. */
export function changeGapMs(changes: readonly ChordChange[], pedalHeld: boolean): Figure {
  if (pedalHeld) return notMeasured({ notice: 'pedal-held' });
  if (changes.length === 0) return notMeasured({ notice: 'needs-chords' });
  const gaps = changes.flatMap(({ gapMs }) => (isMeasured(gapMs) ? [gapMs.value] : []));
  if (gaps.length < Math.max(2, changes.length / 2))
    return notMeasured({ notice: 'damping-not-heard', of: 'chords' });
  return {
    value: median(gaps)!,
    plusMinus: (RELEASE_SD_MS * Math.sqrt(Math.PI / 2)) / Math.sqrt(gaps.length),
  };
}

/** The change of chord that took longest, against the median of the others. */
export interface SlowChange {
  readonly step: number;
  readonly ratio: number;
  readonly plusMinus: number;
}

/** Changes that come so near to the slowest, in its own ±, may be slower in truth. */
const RIVAL_SDS = 2;

/**
 * Intervals between chords → the slowest change: its IOI / median IOI of the other changes. Undefined under three changes.
 *
 * ± from the listener's noise: that of the median, π/2n of a single variance, counts as many times as the ratio says, and neighbours
 * share an onset, so that what lengthens one shortens them; and the slowest of several that noise could exchange is likely the one that
 * noise made longest.
 */
export function slowestChange(intervals: readonly Interval[], exercise: Exercise): SlowChange | undefined {
  const changes = intervals.filter((interval) => isChord(exercise, interval.step));
  if (changes.length < 3) return undefined;
  const slowest = changes.reduce((a, b) => (b.perBeatMs > a.perBeatMs ? b : a));
  const others = changes.filter((one) => one !== slowest);
  const usual = median(others.map((one) => one.perBeatMs))!;
  const ratio = slowest.perBeatMs / usual;
  const ofUsual = (Math.PI / 2) * ratio ** 2 + 2 * ratio;
  const sdMs = Math.sqrt(slowest.noiseVariance * (1 + ofUsual / others.length));
  const rivals = changes.filter((one) => slowest.perBeatMs - one.perBeatMs < RIVAL_SDS * sdMs).length;
  const chosenMs = (Math.sqrt(slowest.noiseVariance) * MEAN_RANGE[Math.min(rivals, 5)]!) / 2;
  return { step: slowest.step, ratio, plusMinus: Math.hypot(sdMs, chosenMs) / usual };
}

/** Worst change of chord against the median of the other changes, ratio of IOIs. */
export function changeHesitationRatio(intervals: readonly Interval[], exercise: Exercise): Figure {
  const slowest = slowestChange(intervals, exercise);
  if (slowest === undefined) return notMeasured({ notice: 'needs-changes' });
  return { value: slowest.ratio, plusMinus: slowest.plusMinus };
}

function isChord(exercise: Exercise, step: number): boolean {
  const notes = exercise.steps[step]!.notes;
  return notes.some((note, index) => notes.some((other, at) => at !== index && other.hand === note.hand));
}
