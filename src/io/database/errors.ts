import { EvenfallError, troubleOf } from '../troubles/index.ts';
import type { Keeper } from '../troubles/index.ts';

/** What is kept on this device could not be read or written. */
export class StorageError extends EvenfallError {
  override readonly name = 'StorageError';
}

/** Any failure of the browser's storage → one that can be shown. */
export function asStorageError(error: unknown, keeper: Keeper): StorageError {
  if (error instanceof StorageError) return error;
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') return new StorageError({ trouble: 'no-room', keeper });
  if (name === 'VersionError') return new StorageError({ trouble: 'used-by-newer', keeper });
  if (name === 'InvalidStateError' || name === 'SecurityError' || error instanceof ReferenceError)
    return new StorageError({ trouble: 'keeps-nothing', keeper });
  return new StorageError({ trouble: 'not-kept', keeper, because: troubleOf(error) });
}
