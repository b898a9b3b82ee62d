import type { Assigned, Review } from '../review/types.ts';

/** A review on the shelf without its reports and sounds: small, since all of them are read at once. */
export interface Shelved {
  /** of the review */
  readonly id: string;
  readonly madeMs: number;
  /** when it, or the one whose place it took, was first put here, ms since 1970: what is assigned counts from then */
  readonly receivedMs: number;
  readonly teacher: string;
  readonly words: string;
  /** how many attempts it speaks of, and how many remarks it makes on them */
  readonly attempts: number;
  readonly remarks: number;
  readonly assignment: readonly Assigned[];
  /** when it was first opened, ms since 1970; null: not yet */
  readonly readMs: number | null;
  /** when it was deleted, ms since 1970; null: it is not. Deleted reviews can be brought back for a week */
  readonly deletedMs: number | null;
}

/** Reviews that a student has received, on this device. All that it promises rejects with StorageError, whose message is plain. */
export interface Shelf {
  /** All of them, deleted ones too, newest first; those deleted over a week ago are ended. */
  all(): Promise<readonly Shelved[]>;
  /**
   * Puts a review here → as it lies here now. The same one again changes nothing, save that a deleted one comes back; one that was
   * made anew under the same name takes its place and is unread.
   */
  put(review: Review): Promise<Shelved>;
  /** The whole, with its sounds; null: there is none of that name. */
  review(id: string): Promise<Review | null>;
  markRead(id: string): Promise<void>;
  /** Deletes so that it can be undone. */
  remove(id: string): Promise<void>;
  restore(id: string): Promise<void>;
  close(): Promise<void>;
}
