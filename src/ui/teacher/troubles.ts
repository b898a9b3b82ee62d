import { DEFAULT_CRITERIA, lateCrossings, type Report } from '../../engine/index.ts';
import { playRange, type PlayRange, type Spot } from '../plots/pearls/spots.ts';

/** A place to be heard, and where to play for it. */
export interface Trouble {
  readonly spot: Spot;
  readonly range: PlayRange;
}

/**
 * The places of an attempt that a teacher would want to hear, in order of time: every wrong, missed, extra and unsure note, late
 * crossing, hesitating change, spread chord and step where the hands fall apart (by the default criteria, as the picture points
 * them out), and the steps that the verdict speaks of. Each plays from the note before it.
 */
export function troublesOf(report: Report, spots: readonly Spot[]): readonly Trouble[] {
  const { changes, chords, togetherness } = report.measures;
  const { changeRatio, chordSpreadMs, handsApartMs } = DEFAULT_CRITERIA;
  const late = lateCrossings(report);
  const spread = chords.filter((one) => one.spreadMs > chordSpreadMs);
  const steps = new Set([
    ...report.words.steps,
    ...changes.filter(({ ratio }) => ratio > changeRatio).map(({ step }) => step),
    ...(togetherness?.steps ?? [])
      .filter(({ leftMinusRightMs }) => Math.abs(leftMinusRightMs) > handsApartMs)
      .map(({ step }) => step),
  ]);
  const heldOver = new Set(report.unsure.filter((one) => one.heldOver === true).map(({ step }) => step));
  return spots
    .filter(
      (spot) =>
        spot.pearls.some(({ kind }) => kind === 'wrong' || kind === 'missed' || kind === 'extra') ||
        (spot.pearls.some(({ kind }) => kind === 'unsure') && !heldOver.has(spot.step)) ||
        [...late, ...spread].some(({ step, hand }) => step === spot.step && hand === spot.hand) ||
        steps.has(spot.step),
    )
    .map((spot) => ({ spot, range: playRange(spots, spot) }));
}

/** The trouble after (1) or before (−1) a moment; at either end the last one again. Null: there is none. */
export function troubleFrom(
  troubles: readonly Trouble[],
  current: number | null,
  direction: 1 | -1,
): Trouble | null {
  if (current === null) return (direction === 1 ? troubles[0] : troubles.at(-1)) ?? null;
  if (direction === 1) return troubles.find(({ spot }) => spot.index > current) ?? troubles.at(-1) ?? null;
  return troubles.findLast(({ spot }) => spot.index < current) ?? troubles[0] ?? null;
}
