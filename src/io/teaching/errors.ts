/** Recordings of students could not be read or kept; the message is plain and says the way out. */
export class TeachingError extends Error {
  override readonly name = 'TeachingError';
}

/** Any failure of the browser's storage → one that can be shown. */
export function asTeachingError(error: unknown): TeachingError {
  if (error instanceof TeachingError) return error;
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') {
    return new TeachingError(
      'There is no room left on this device for recordings. Make the reviews that are due, then delete older recordings.',
    );
  }
  if (name === 'InvalidStateError' || name === 'SecurityError' || error instanceof ReferenceError) {
    return new TeachingError(
      'This browser keeps no recordings here, as in a private window. Open it in an ordinary window.',
    );
  }
  const said = error instanceof Error ? error.message : String(error);
  return new TeachingError(`The recordings could not be kept: ${said}`);
}
