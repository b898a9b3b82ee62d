/** Why a review is refused, for those who must tell the kinds apart. */
export type ReviewFailure = 'not-a-review' | 'newer' | 'too-large' | 'damaged' | 'not-writable';

/** A review that is not read or written; the message is plain and says the way out. Nothing of it has been taken. */
export class ReviewError extends Error {
  override readonly name = 'ReviewError';
  readonly kind: ReviewFailure;

  constructor(kind: ReviewFailure, message: string) {
    super(message);
    this.kind = kind;
  }
}

/** The whole file is refused for something in it. `why` is a sentence. */
export function refusal(why: string): ReviewError {
  return new ReviewError('damaged', `This review is refused: ${why} Ask for the file once more.`);
}
