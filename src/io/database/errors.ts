/** What is kept on this device could not be read or written; the message is plain and says the way out. */
export class StorageError extends Error {
  override readonly name = 'StorageError';
}

/** What a database says when the browser's storage fails, each with the way out. */
export interface StorageTroubles {
  /** no room left */
  readonly full: string;
  /** a newer version of the page has been here */
  readonly newer: string;
  /** the browser keeps nothing, as in a private window */
  readonly nowhere: string;
  /** anything else, as the browser says it */
  readonly other: (said: string) => string;
}

/** Any failure of the browser's storage → one that can be shown. */
export function asStorageError(error: unknown, troubles: StorageTroubles): StorageError {
  if (error instanceof StorageError) return error;
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') return new StorageError(troubles.full);
  if (name === 'VersionError') return new StorageError(troubles.newer);
  if (name === 'InvalidStateError' || name === 'SecurityError' || error instanceof ReferenceError)
    return new StorageError(troubles.nowhere);
  return new StorageError(troubles.other(messageOf(error)));
}
import { messageOf } from '../check/index.ts';
