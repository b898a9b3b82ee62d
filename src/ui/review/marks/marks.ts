import type { Correction, RemarkPlace, Remark, SentAttempt } from '../../../io/review/index.ts';
import type { Pin } from '../../plots/pearls/pins.ts';
import type { Spot } from '../../plots/pearls/spots.ts';

/** What a teacher says of a place in an attempt: a remark, or a verdict of her own beside the tool's. */
export interface Mark {
  readonly id: string;
  /** as on the string; null: of the whole attempt */
  readonly number: number | null;
  readonly place: RemarkPlace;
  /** of a note, the spot that it is part of; null: a stretch, the whole, or a note that is not on the string */
  readonly spot: Spot | null;
  readonly remark: Remark | null;
  readonly correction: Correction | null;
}

/**
 * An attempt and its spots → what is said of it, in the order in which it is read: of the whole first, then along the
 * string, numbered from 1. Corrections of the whole stand beside the verdict and are not among them.
 */
export function marksOf(
  { remarks, corrections }: Pick<SentAttempt, 'remarks' | 'corrections'>,
  spots: readonly Spot[],
): readonly Mark[] {
  const all = [
    ...remarks.map((remark) => ({
      id: `remark-${remark.id}`,
      place: remark.place,
      remark,
      correction: null,
    })),
    ...corrections
      .filter(({ place }) => place.kind !== 'attempt')
      .map((correction, at) => ({
        id: `correction-${at + 1}`,
        place: correction.place,
        remark: null,
        correction,
      })),
  ].map((said) => ({ ...said, spot: spotOf(spots, said.place) }));
  const whole = all.filter(({ place }) => place.kind === 'attempt');
  const placed = all
    .filter(({ place }) => place.kind !== 'attempt')
    .map((said) => ({ said, atSec: startSec(spots, said) }))
    .sort((a, b) => a.atSec - b.atSec)
    .map(({ said }, at) => ({ ...said, number: at + 1 }));
  return [...whole.map((said) => ({ ...said, number: null })), ...placed];
}

/** The mark over the string; null where it speaks of nothing that is drawn. */
export function pinOf({ id, number, place, spot }: Mark): Pin | null {
  if (number === null || place.kind === 'attempt') return null;
  if (place.kind === 'stretch')
    return { id, number, spot: null, fromStep: place.fromStep, toStep: place.toStep };
  return spot === null ? null : { id, number, spot: spot.index, fromStep: spot.step, toStep: spot.step };
}

export function pinsOf(marks: readonly Mark[]): readonly Pin[] {
  return marks.flatMap((mark) => pinOf(mark) ?? []);
}

/** The spot of a note: of its step where it has one, with its key, and nearest in time. */
export function spotOf(spots: readonly Spot[], place: RemarkPlace): Spot | null {
  if (place.kind !== 'note') return null;
  const { step, midi, timeSec } = place;
  const fits = spots.filter((spot) => (step === null ? spot.extra : spot.step === step && !spot.extra));
  const ofKey = fits.filter(({ pearls }) =>
    pearls.some((pearl) => pearl.midi === midi || pearl.writtenMidi === midi),
  );
  const [first, ...others] = ofKey.length > 0 ? ofKey : fits;
  if (first === undefined) return null;
  const apart = (spot: Spot): number => Math.abs(spot.timeSec - (timeSec ?? spot.timeSec));
  return others.reduce((best, spot) => (apart(spot) < apart(best) ? spot : best), first);
}

function startSec(
  spots: readonly Spot[],
  { place, spot }: { place: RemarkPlace; spot: Spot | null },
): number {
  if (spot !== null) return spot.timeSec;
  if (place.kind === 'note') return place.timeSec ?? Infinity;
  const inside = spots.filter((one) => place.kind === 'stretch' && one.step >= place.fromStep && !one.extra);
  return inside[0]?.timeSec ?? Infinity;
}
