import type { Report } from '../../../engine/index.ts';
import type { Correction, RemarkPlace, Remark } from '../../../io/review/index.ts';
import type { Said } from '../../../io/teaching/index.ts';

/** Two readings of one sound place an onset within this, seconds; half the shortest interval that is played. */
const SAME_SEC = 0.05;

export function samePlace(a: RemarkPlace, b: RemarkPlace): boolean {
  if (a.kind === 'stretch' && b.kind === 'stretch') return a.fromStep === b.fromStep && a.toStep === b.toStep;
  if (a.kind === 'note' && b.kind === 'note') {
    return a.step === b.step && a.midi === b.midi && a.timeSec === b.timeSec;
  }
  return a.kind === 'attempt' && b.kind === 'attempt';
}

/**
 * What was said of one reading of an attempt → the same of another. A note that sounded is found again by its time; what is not
 * found belongs to the whole attempt from then on, and a correction of a note that is not found falls away.
 */
export function moved({ remarks, corrections, ...said }: Said, report: Report): Said {
  return {
    ...said,
    remarks: remarks.map((one): Remark => ({
      ...one,
      place: placeIn(one.place, report) ?? { kind: 'attempt' },
    })),
    corrections: corrections.flatMap((one): readonly Correction[] => {
      const place = placeIn(one.place, report);
      return place === null ? [] : [{ ...one, place }];
    }),
  };
}

function placeIn(place: RemarkPlace, report: Report): RemarkPlace | null {
  if (place.kind === 'attempt') return place;
  if (place.kind === 'stretch' || place.timeSec === null) return null;
  const { timeSec, midi } = place;
  const there = report.notes.filter((one) => Math.abs(one.timeSec - timeSec) < SAME_SEC);
  // Another key may put the whole piano a semitone higher or lower.
  const note = there.find((one) => one.midi === midi) ?? there.find((one) => Math.abs(one.midi - midi) === 1);
  return note === undefined
    ? null
    : { kind: 'note', step: note.step, midi: note.midi, timeSec: note.timeSec };
}

/** What was said before something was removed, and what is said now → both; of two alike the one of now. */
export function together(before: Said, now: Said): Said {
  const remarkNow = (one: Remark): Remark => now.remarks.find(({ id }) => id === one.id) ?? one;
  const correctionNow = (one: Correction): Correction =>
    now.corrections.find(({ place }) => samePlace(place, one.place)) ?? one;
  return {
    ...now,
    remarks: [
      ...before.remarks.map(remarkNow),
      ...now.remarks.filter(({ id }) => before.remarks.every((one) => one.id !== id)),
    ],
    corrections: [
      ...before.corrections.map(correctionNow),
      ...now.corrections.filter(({ place }) =>
        before.corrections.every((one) => !samePlace(one.place, place)),
      ),
    ],
  };
}
