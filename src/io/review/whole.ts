import type * as v from 'valibot';
import { stepsIn, REPORT } from '../../engine/index.ts';
import type { Report } from '../../engine/index.ts';
import { checked } from '../check/index.ts';
import { EvenfallError } from '../troubles/index.ts';
import type { Trouble } from '../troubles/index.ts';
import { REVIEW_LIMITS } from './manifest.ts';
import type { RemarkPlace, Review, SentAttempt, WithExample } from './types.ts';

/** A review that is not read or written. Nothing of it has been taken. */
export class ReviewError extends EvenfallError {
  override readonly name = 'ReviewError';
}

/** The whole file is refused for something in it. */
export function refusal(because: Trouble): ReviewError {
  return new ReviewError({ trouble: 'review-refused', because });
}

/** A report out of a review's file → the same, checked; throws ReviewError. `where` begins the message. */
export function checkedReport(value: unknown, where: string): Report {
  const found = checked(REPORT, value);
  if ('issue' in found)
    throw refusal({ trouble: 'review-no-report', name: where, place: placeOf(found.issue) });
  const { notes, missed, unsure } = found.value;
  if (notes.length + missed.length + unsure.length > REVIEW_LIMITS.mostNotes)
    throw refusal({ trouble: 'review-too-many-notes', name: where });
  return found.value;
}

/** Throws ReviewError where a remark or a correction hangs on a step that its attempt does not have. */
export function checkPlaces({ attempts }: Review): void {
  attempts.forEach((attempt, index) => {
    const steps = stepsIn(attempt.report);
    const places = placesIn(attempt);
    if (places.some((place) => lastStep(place) >= steps))
      throw refusal({ trouble: 'review-no-such-step', attempt: index + 1 });
  });
}

function placesIn({ remarks, corrections }: SentAttempt): readonly RemarkPlace[] {
  return [...remarks, ...corrections].map((one) => one.place);
}

function lastStep(place: RemarkPlace): number {
  if (place.kind === 'attempt') return -1;
  return place.kind === 'note' ? (place.step ?? -1) : place.toStep;
}

/** Where in the manifest or a report it went wrong: names of fields only, never what stands in them. */
export function placeOf(issue: v.BaseIssue<unknown>): string {
  const path = (issue.path ?? []).map(({ key }) => (typeof key === 'number' ? key + 1 : key));
  const known = path.filter((part) => typeof part === 'number' || /^[A-Za-z]{1,40}$/.test(String(part)));
  return known.length === 0 ? 'the whole' : known.join('.');
}

/** What a review speaks of → the student's own attempts in their order, each with the teacher's example beside it. */
export function withExamples({ attempts }: Pick<Review, 'attempts'>): readonly WithExample[] {
  return attempts
    .filter(({ exampleFor }) => exampleFor === undefined)
    .map((attempt) => ({
      attempt,
      example: attempts.find(({ exampleFor }) => exampleFor === attempt.id) ?? null,
    }));
}
