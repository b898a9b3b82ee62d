/** Why a file gave no attempts: it cannot be read; it was called off; or a fault of ours. */
export type SortingFailure = 'unreadable' | 'cancelled' | 'failed';

/** A file that was not sorted. The message says what and the way out. */
export class SortingError extends Error {
  override readonly name = 'SortingError';
  readonly reason: SortingFailure;

  constructor(reason: SortingFailure, message: string) {
    super(message);
    this.reason = reason;
  }
}
