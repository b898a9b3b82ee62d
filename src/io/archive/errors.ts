import { EvenfallError } from '../troubles/index.ts';

/** An archive that is not read: damaged, too large, or laid out to do harm. */
export class ArchiveError extends EvenfallError {
  override readonly name = 'ArchiveError';
}
