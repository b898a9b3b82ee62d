/** The shelf of reviews could not be read or written; the message is plain and says the way out. */
export class ShelfError extends Error {
  override readonly name = 'ShelfError';
}

/** Any failure of the browser's storage → one that can be shown. */
export function asShelfError(error: unknown): ShelfError {
  if (error instanceof ShelfError) return error;
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') {
    return new ShelfError(
      'There is no room left on this device for the review. Delete older reviews or the sound of older attempts, then open it again.',
    );
  }
  if (name === 'VersionError') {
    return new ShelfError(
      'A newer version of this page has the reviews open. Close all its windows and open it again.',
    );
  }
  if (name === 'InvalidStateError' || name === 'SecurityError' || error instanceof ReferenceError) {
    return new ShelfError(
      'This browser keeps no reviews here, as in a private window. The review is shown, but not stored; keep its file.',
    );
  }
  const said = error instanceof Error ? error.message : String(error);
  return new ShelfError(`The reviews could not be used: ${said}`);
}
