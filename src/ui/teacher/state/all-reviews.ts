import type { Playing, Student } from '../../../io/teaching/index.ts';
import { fileNameOf } from '../../kit/save.ts';
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
  /** numbered, so that no two have one name whoever they are for */
  readonly fileName: string;
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

/** One review for each of them, one after the other; `word`: what a review is called in its name. Rejects where one cannot be read. */
export async function packAll(
  teaching: Teaching,
  due: readonly Due[],
  { teacher, word }: { readonly teacher: string; readonly word: string },
  onProgress: (share: number) => void = () => undefined,
): Promise<readonly PackedReview[]> {
  const packed: PackedReview[] = [];
  for (const [at, { student, attempts }] of due.entries()) {
    const round = roundOf(student, teaching.attemptsOf(student), attempts);
    const options = { teacher, withSound: true, round };
    const review = await reviewOf(teaching.devices, student, attempts, options, (share) =>
      onProgress((at + share) / due.length),
    );
    const file = await teaching.devices.writeReview(review);
    const { id, madeMs } = review;
    const fileName = fileNameOf([String(at + 1), student.name, word], madeMs, 'zip');
    packed.push({ student, attempts, id, madeMs, fileName, file });
  }
  return packed;
}
