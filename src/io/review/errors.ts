import { EvenfallError } from '../troubles/index.ts';
import type { Trouble } from '../troubles/index.ts';

/** Why a review is refused, for those who must tell the kinds apart. */
export type ReviewFailure = 'not-a-review' | 'newer' | 'too-large' | 'damaged' | 'not-writable';

/** A review that is not read or written. Nothing of it has been taken. */
export class ReviewError extends EvenfallError {
  override readonly name = 'ReviewError';
  readonly kind: ReviewFailure;

  constructor(kind: ReviewFailure, trouble: Trouble) {
    super(trouble);
    this.kind = kind;
  }
}

/** The whole file is refused for something in it. */
export function refusal(because: Trouble): ReviewError {
  return new ReviewError('damaged', { trouble: 'review-refused', because });
}
