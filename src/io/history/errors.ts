/** The journal could not be read or written; the message is plain and says the way out. */
export class HistoryError extends Error {
  override readonly name = 'HistoryError';
}

/** Any failure of the browser's storage → one that can be shown. */
export function asHistoryError(error: unknown): HistoryError {
  if (error instanceof HistoryError) return error;
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') {
    return new HistoryError(
      'There is no room left on this device for the journal. Export it, then let go of the sound of older attempts.',
    );
  }
  if (name === 'VersionError') {
    return new HistoryError(
      'A newer version of this page has the journal open. Close all its windows and open it again.',
    );
  }
  if (name === 'InvalidStateError' || name === 'SecurityError' || error instanceof ReferenceError) {
    return new HistoryError(
      'This browser keeps no journal here, as in a private window. Attempts are told, but not stored; save their sound.',
    );
  }
  const said = error instanceof Error ? error.message : String(error);
  return new HistoryError(`The journal could not be used: ${said}`);
}
