import type { Playing, Student } from '../../../io/teaching/index.ts';
import { reviewOf, roundOf } from './review.ts';
import type { Teaching } from './teaching.svelte.ts';

/** A student to whom a review is due, and the attempts in it. */
export interface Due {
  readonly student: Student;
  readonly attempts: readonly Playing[];
}

/** A review that was packed for one of them. */
export interface PackedReview extends Due {
  readonly id: string;
  readonly madeMs: number;
  readonly file: Blob;
}

/** Students with something heard or remarked on that is not answered yet, by name; each with those attempts. */
export function dueReviews({ lists }: Teaching): readonly Due[] {
  return lists.students.flatMap((student) => {
    const attempts = lists.playings.filter(
      (one) =>
        one.studentId === student.id &&
        one.summary !== null &&
        one.answeredMs === null &&
        (one.heardMs !== null || one.remarks > 0),
    );
    return attempts.length === 0 ? [] : [{ student, attempts }];
  });
}

/** One review for each of them, one after the other. Rejects where one cannot be read. */
export async function packAll(
  teaching: Teaching,
  due: readonly Due[],
  teacher: string,
  onProgress: (share: number) => void,
): Promise<readonly PackedReview[]> {
  const packed: PackedReview[] = [];
  for (const [at, { student, attempts }] of due.entries()) {
    const round = roundOf(student, teaching.attemptsOf(student), attempts);
    const options = { teacher, withSound: true, round };
    const review = await reviewOf(teaching.devices, student, attempts, options, (share) =>
      onProgress((at + share) / due.length),
    );
    const file = await teaching.devices.writeReview(review);
    packed.push({ student, attempts, id: review.id, madeMs: review.madeMs, file });
  }
  return packed;
}
