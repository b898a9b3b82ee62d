import { EvenfallError } from '../troubles/index.ts';
import type { Trouble } from '../troubles/index.ts';

/** Why a file gave no attempts: it cannot be read; it was called off; or a fault of ours. */
export type SortingFailure = 'unreadable' | 'cancelled' | 'failed';

/** A file that was not sorted. */
export class SortingError extends EvenfallError {
  override readonly name = 'SortingError';
  readonly reason: SortingFailure;

  constructor(reason: SortingFailure, trouble: Trouble) {
    super(trouble);
    this.reason = reason;
  }
}
