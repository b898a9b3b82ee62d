/** An archive that is not read: damaged, too large, or laid out to do harm. The message says why, for people. */
export class ArchiveError extends Error {
  override readonly name = 'ArchiveError';
}
