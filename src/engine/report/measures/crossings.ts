import { median, quantile } from '../../base/statistics.ts';
import type { Exercise, Hand } from '../../exercise/index.ts';
import type { Criteria } from '../criteria/index.ts';
import type { CrossingDelay, Figure } from '../types.ts';
import { justNoticeableMs } from '../criteria/index.ts';
import { notMeasured } from './estimate.ts';
import { shareOverByOnset, sureOf } from './sure.ts';
import type { Interval } from './strikes.ts';

/** A crossing is compared with this many of the nearest intervals without one. */
const NEIGHBOURS = 4;
/** … and with no fewer than these. */
const FEWEST = 2;
/**
 * A scatter known of n intervals is exceeded by chance more often than one that is known exactly: by so many n-ths more is asked
 * (Student's t at 1 in 1000 against the normal: 2.3 times at 4, 1.3 at 12; Student 1908, memory).
 */
const FEW = 4;
/** They share its onsets: what shortens it lengthens them. Two on each side add a quarter to the variance of the difference. */
const SHARED = 0.25;

/**
 * What is told as ±, in SDs of the ear's error. It has heavy tails (`sure.ts`): 84 % of it lie within one SD and 96 % within two, 76 % within
 * so much and 94 % within twice that. What is late is decided by the SD.
 */
const TOLD_SDS = 0.8;

/** Steps that come late for another reason: the playing stopped before them, or they belong to an ending. */
export interface Apart {
  readonly stops: ReadonlySet<number>;
  readonly ending: ReadonlySet<number>;
}

/**
 * Crossing delay: IOI into the crossing − median IOI of the nearest steps without crossing (four of them), ms and as a
 * ratio. With both hands a crossing of either is a crossing of the step: the hands wait for each other, and a hand that waited
 * for the other's late thumb is no measure of what is usual. Only where too few steps are left, those of the hand itself. ± from the timing noise
 * of both; the median of n is taken as π/2n of a single variance.
 * Late: over the criterion's share of the interval, or clearly audible (several just-noticeable differences), as surely as the
 * criteria ask of the worst of so many; not after a stop, and not in the ending where no other is; and in all cases beyond the player's own scatter elsewhere (crossings and the turn left out), since among uneven notes
 * some late one always falls on a crossing.
 */
export function crossingDelays(
  intervals: readonly Interval[],
  exercise: Exercise,
  hand: Hand,
  criteria: Criteria,
  { stops, ending }: Apart,
): readonly CrossingDelay[] {
  const ownPlain = intervals.filter((interval) => !interval.intoCrossing);
  const bothPlain = ownPlain.filter(({ step }) => exercise.steps[step]!.crossings.length === 0);
  const plain = bothPlain.length >= FEWEST ? bothPlain : ownPlain;
  const turn = exercise.steps.find((step) => step.turn)?.step;
  const usualOnes = plain.filter((interval) => interval.fromStep !== turn);
  // Two or three plain intervals may agree by chance: then how far the others lie apart among themselves counts as well.
  const others = plain.length < NEIGHBOURS ? intervals.filter((interval) => !plain.includes(interval)) : [];
  const scatterMs = scatterOf([usualOnes, others].map((kind) => kind.map((interval) => interval.ioiMs)));
  const sureEnough = sureOf(intervals.filter(({ intoCrossing }) => intoCrossing).length, criteria);
  const all = intervals.flatMap((interval): CrossingDelay[] => {
    const crossing = exercise.steps[interval.step]!.crossings.find((one) => one.hand === hand);
    if (crossing === undefined) return [];
    const nearest = [...plain]
      .sort((a, b) => Math.abs(a.step - interval.step) - Math.abs(b.step - interval.step))
      .slice(0, NEIGHBOURS);
    const usual = median(nearest.map((neighbour) => neighbour.perBeatMs));
    if (usual === undefined || nearest.length < FEWEST) return [];
    const usualMs = usual * interval.beats;
    const delayMs = interval.ioiMs - usualMs;
    const noiseMs = Math.sqrt(interval.noiseVariance) * interval.beats;
    const sdMs = noiseMs * Math.sqrt(1 + SHARED + Math.PI / (2 * nearest.length));
    const allowedMs = Math.min(
      criteria.crossingShareOfInterval * usualMs,
      criteria.clearlyAudibleJnds * justNoticeableMs(usualMs),
    );
    const ownMs = criteria.clearlyAudibleSds * scatterMs * (1 + FEW / intervals.length);
    const sure = shareOverByOnset({ value: delayMs, plusMinus: sdMs }, allowedMs);
    const late = sure >= sureEnough && delayMs > ownMs && !stops.has(interval.step);
    return [
      {
        step: interval.step,
        hand,
        kind: crossing.kind,
        direction: crossing.direction,
        delayMs,
        plusMinusMs: TOLD_SDS * sdMs,
        ratio: interval.ioiMs / usualMs,
        late,
        sure,
      },
    ];
  }); // A note of the ending is broad, not late, unless the crossings before it are late in the same way.
  return all.map((one) => {
    const alike = all.some(
      ({ step, direction, late }) => late && direction === one.direction && !ending.has(step),
    );
    return ending.has(one.step) && !alike ? { ...one, late: false } : one;
  });
}

/**
 * SD of Gaussian values of one or more kinds, as the upper quartile of their distances from the median of their kind / 1.15: one
 * late note in four does not move it.
 */
function scatterOf(kinds: readonly (readonly number[])[]): number {
  const away = kinds.flatMap((values) => {
    const middle = median(values) ?? 0;
    return values.map((value) => Math.abs(value - middle));
  });
  return (quantile(away, 0.75) ?? 0) / 1.1503;
}

/** Mean delay over all crossings, ms. */
export function crossingDelayMs(crossings: readonly CrossingDelay[], exercise: Exercise): Figure {
  if (crossings.length === 0) {
    const some = exercise.steps.some((step) => step.crossings.length > 0);
    return notMeasured({ notice: some ? 'no-crossing-whole' : 'no-crossing' });
  }
  const value = crossings.reduce((sum, { delayMs }) => sum + delayMs, 0) / crossings.length;
  const noise = crossings.reduce((sum, { plusMinusMs }) => sum + plusMinusMs ** 2, 0);
  return { value, plusMinus: Math.sqrt(noise) / crossings.length };
}
